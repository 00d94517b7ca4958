#include "base/read_file.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <istream>
#include <system_error>

namespace gw {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Error> refuse(const std::string& path,
                             const std::string& sentence,
                             const std::string& expected,
                             const std::string& found) {
    return fail({ErrorCode::unreadable, sentence, path, {}, expected, found});
}

tl::unexpected<Error> refuseSize(const std::string& path,
                                 std::size_t mostBytes,
                                 const std::string& found) {
    return refuse(
        path, "the file is too large", "at most " + std::to_string(mostBytes) + " bytes", found);
}

std::string kindOf(fs::file_type type) {
    return type == fs::file_type::directory ? "a folder" : "a device, pipe or socket";
}

/// Counts for itself: the file may have grown since its size was asked, and some tell none.
Result<std::string> readToEnd(std::istream& in, const std::string& path, std::size_t mostBytes) {
    std::string bytes;
    std::array<char, 65536> chunk{};
    while (in && bytes.size() <= mostBytes) {
        in.read(chunk.data(), chunk.size());
        bytes.append(chunk.data(), static_cast<std::size_t>(in.gcount()));
    }
    if (in.bad()) {
        return refuse(path, "the file could not be read to its end", "a readable file", "an error");
    }
    if (bytes.size() > mostBytes) {
        return refuseSize(path, mostBytes, "more");
    }
    return bytes;
}

}  // namespace

Result<std::string> readFile(const std::string& path, std::size_t mostBytes) {
    std::error_code trouble;
    const auto status = fs::status(path, trouble);
    if (!fs::exists(status)) {
        const bool absent = !trouble || trouble == std::errc::no_such_file_or_directory;
        return refuse(path,
                      "the file cannot be opened",
                      "a file",
                      absent ? "nothing there" : trouble.message());
    }
    if (!fs::is_regular_file(status)) {
        return refuse(path, "this is not a file", "a file", kindOf(status.type()));
    }
    const auto size = fs::file_size(path, trouble);
    if (!trouble && size > mostBytes) {
        return refuseSize(path, mostBytes, std::to_string(size) + " bytes");
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        return refuse(
            path, "the file cannot be opened", "a file we may read", std::strerror(errno));
    }
    return readToEnd(in, path, mostBytes);
}

}  // namespace gw

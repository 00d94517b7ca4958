#include "base/read_file.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
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

std::string kindOf(fs::file_type type) {
    return type == fs::file_type::directory ? "a folder" : "a device, pipe or socket";
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
        return refuse(path,
                      "the file is too large",
                      "at most " + std::to_string(mostBytes / 1'000'000) + " MB",
                      std::to_string(size / 1'000'000) + " MB");
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        return refuse(
            path, "the file cannot be opened", "a file we may read", std::strerror(errno));
    }
    std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    if (in.bad()) {
        return refuse(path, "the file could not be read to its end", "a readable file", "an error");
    }
    return bytes;
}

}  // namespace gw

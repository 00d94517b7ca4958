#include "fuzz/refusal.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "fuzz/require.h"

namespace gw::fuzz {
namespace {

bool isControl(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7F;
}

// The library's own reader is the judge of what is UTF-8.
bool isUtf8(const std::string& line) {
    std::string quoted = "\"";
    for (const char c : line) {
        quoted += (c == '"' || c == '\\') ? '.' : c;
    }
    return nlohmann::json::accept(quoted + '"');
}

}  // namespace

void requireOneClearLine(const Error& error, const std::string& file) {
    const auto line = toLine(error);
    require(!error.sentence.empty(), "an error has a sentence");
    require(error.file == file, "an error names the file: " + line);
    require(std::none_of(line.begin(), line.end(), isControl), "an error is one line: " + line);
    require(isUtf8(line), "an error is UTF-8: " + line);
}

}  // namespace gw::fuzz

#include "base/result.h"

#include <array>

namespace gw {
namespace {

void appendPrintable(std::string& out, const std::string& text) {
    constexpr std::array<char, 17> kHex = {"0123456789ABCDEF"};
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7F) {
            out += "\\x";
            out += kHex.at(byte >> 4U);
            out += kHex.at(byte & 0xFU);
        } else {
            out += c;
        }
    }
}

}  // namespace

std::string toLine(const Error& error) {
    std::string line;
    for (const auto* part : {&error.file, &error.place}) {
        if (!part->empty()) {
            appendPrintable(line, *part);
            line += ": ";
        }
    }
    appendPrintable(line, error.sentence);
    if (error.expected.empty() && error.found.empty()) {
        return line;
    }
    line += " (";
    if (!error.expected.empty()) {
        line += "expected ";
        appendPrintable(line, error.expected);
    }
    if (!error.found.empty()) {
        line += error.expected.empty() ? "found " : ", found ";
        appendPrintable(line, error.found);
    }
    return line + ")";
}

}  // namespace gw

#include "base/id.h"

#include <algorithm>

namespace gw {
namespace {

bool isLetterOrDigit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

}  // namespace

bool isValidId(const std::string& text) {
    constexpr std::size_t kLongest = 40;
    return !text.empty() && text.size() <= kLongest && isLetterOrDigit(text.front()) &&
           std::all_of(text.begin(), text.end(), [](char c) {
               return isLetterOrDigit(c) || c == '-' || c == '_' || c == '.';
           });
}

}  // namespace gw

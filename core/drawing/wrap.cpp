#include "drawing/wrap.h"

#include <algorithm>
#include <utility>

namespace gw::drawing {
namespace {

bool isContinuation(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

std::vector<std::string> wordsOf(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : text) {
        const bool blank = static_cast<unsigned char>(c) <= 0x20U || c == 0x7F;
        if (!blank) {
            word += c;
        } else if (!word.empty()) {
            words.push_back(std::exchange(word, {}));
        }
    }
    if (!word.empty()) {
        words.push_back(word);
    }
    return words;
}

class Measure {
public:
    Measure(double width, double height, Face face, const TextMetrics& metrics)
        : width_(width), height_(height), face_(face), metrics_(metrics) {}

    bool fits(std::string_view text) const {
        return metrics_.width(text, height_, face_) <= width_ + 1e-9;
    }

    /// Bytes of the longest beginning that fits, at least one character.
    std::size_t longestBeginning(std::string_view word) const {
        std::size_t end = 0;
        std::size_t next = nextCharacter(word, 0);
        do {
            end = next;
            next = nextCharacter(word, end);
        } while (end < word.size() && fits(word.substr(0, next)));
        return end;
    }

private:
    static std::size_t nextCharacter(std::string_view word, std::size_t from) {
        std::size_t next = std::min(from + 1, word.size());
        while (next < word.size() && isContinuation(word[next])) {
            ++next;
        }
        return next;
    }

    double width_;
    double height_;
    Face face_;
    const TextMetrics& metrics_;
};

}  // namespace

std::vector<std::string> wrapped(
    std::string_view text, double width, double height, Face face, const TextMetrics& metrics) {
    const Measure measure(width, height, face, metrics);
    std::vector<std::string> lines;
    std::string line;
    for (std::string word : wordsOf(text)) {
        std::string longer = line;
        longer += line.empty() ? "" : " ";
        longer += word;
        if (measure.fits(longer)) {
            line = longer;
            continue;
        }
        if (!line.empty()) {
            lines.push_back(std::exchange(line, {}));
        }
        while (!measure.fits(word)) {
            const auto end = measure.longestBeginning(word);
            if (end == word.size()) {
                break;
            }
            lines.push_back(word.substr(0, end));
            word.erase(0, end);
        }
        line = std::move(word);
    }
    if (!line.empty() || lines.empty()) {
        lines.push_back(std::move(line));
    }
    return lines;
}

std::string shortened(
    std::string_view text, double width, double height, Face face, const TextMetrics& metrics) {
    const auto lines = wrapped(text, 1e9, height, face, metrics);  // one line, blanks made plain
    const Measure measure(width, height, face, metrics);
    std::string line = lines.front();
    if (measure.fits(line)) {
        return line;
    }
    while (!line.empty() && !measure.fits(line + "…")) {
        do {
            const bool more = isContinuation(line.back());
            line.pop_back();
            if (!more) {
                break;
            }
        } while (!line.empty());
    }
    return line + "…";
}

}  // namespace gw::drawing

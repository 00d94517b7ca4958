#include "checks/colour_text.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <utility>
#include <vector>

namespace gw::checks {
namespace {

struct HueWord {
    std::string_view word;
    Hue hue;
};
/// The first word of a hue is the one that is shown.
constexpr auto kHues = std::to_array<HueWord>({{"black", Hue::black},
                                               {"red", Hue::red},
                                               {"blue", Hue::blue},
                                               {"brown", Hue::brown},
                                               {"orange", Hue::orange},
                                               {"yellow", Hue::yellow},
                                               {"white", Hue::white},
                                               {"gray", Hue::gray},
                                               {"grey", Hue::gray},
                                               {"green", Hue::green},
                                               {"purple", Hue::purple},
                                               {"violet", Hue::purple},
                                               {"pink", Hue::pink},
                                               {"bare", Hue::bare}});

constexpr auto kStripeWords =
    std::to_array<std::string_view>({"stripe", "stripes", "striped", "tracer", "tracers"});
constexpr auto kMarkWords = std::to_array<std::string_view>({"tape",
                                                             "taped",
                                                             "tapes",
                                                             "mark",
                                                             "marks",
                                                             "marked",
                                                             "marking",
                                                             "markings",
                                                             "band",
                                                             "bands",
                                                             "banded",
                                                             "sleeve",
                                                             "sleeves"});
constexpr auto kSmallWords = std::to_array<std::string_view>({"with",
                                                              "and",
                                                              "at",
                                                              "both",
                                                              "each",
                                                              "end",
                                                              "ends",
                                                              "the",
                                                              "its",
                                                              "a",
                                                              "light",
                                                              "dark",
                                                              "of",
                                                              "termination",
                                                              "terminations",
                                                              "re",
                                                              "in",
                                                              "all",
                                                              "around"});

template <class Words>
bool isOneOf(const Words& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

std::optional<Hue> hueOf(std::string_view word) {
    for (const HueWord& row : kHues) {
        if (row.word == word) {
            return row.hue;
        }
    }
    return std::nullopt;
}

std::optional<int> numberOf(std::string_view word) {
    constexpr auto kNumbers =
        std::to_array<std::string_view>({"one", "1", "two", "2", "three", "3"});
    const auto found = std::find(kNumbers.begin(), kNumbers.end(), word);
    return found == kNumbers.end()
               ? std::nullopt
               : std::optional(static_cast<int>(found - kNumbers.begin()) / 2 + 1);
}

std::vector<std::string> wordsOf(std::string_view text) {
    constexpr std::string_view kBetween = " ,/-";
    std::vector<std::string> words(1);
    for (const char c : text) {
        if (kBetween.find(c) == std::string_view::npos) {
            words.back() += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    if (words.back().empty()) {
        words.pop_back();
    }
    return words;
}

/// Takes the words one by one.
class Reader {
public:
    /// False where the word does not fit.
    bool take(const std::string& word) {
        if (const auto hue = hueOf(word)) {
            return takeHue(*hue);
        }
        if (const auto number = numberOf(word)) {
            count_ = number;
            return true;
        }
        if (isOneOf(kStripeWords, word)) {
            single_ = word == "stripe" || word == "tracer";
            return takeKind(Kind::stripes);
        }
        return isOneOf(kMarkWords, word) ? takeKind(Kind::marking) : isOneOf(kSmallWords, word);
    }

    std::optional<ColourText> result() {
        const bool settled = placePending(Kind::stripes) && waiting_ == Kind::none && !count_;
        return base_ && settled ? std::optional(ColourText{*base_, stripes_, marking_})
                                : std::nullopt;
    }

private:
    enum class Kind { none, stripes, marking };

    bool takeHue(Hue hue) {
        if (!base_) {
            base_ = hue;
            return true;
        }
        const Kind kind = std::exchange(waiting_, Kind::none);
        if (kind != Kind::none) {
            return place(kind, hue);
        }
        const bool first = !pending_;
        pending_ = hue;
        return first;
    }

    bool takeKind(Kind kind) {
        if (pending_) {
            return placePending(kind);
        }
        const bool fits = base_ && waiting_ == Kind::none && !count_;
        waiting_ = kind;
        return fits;
    }

    bool placePending(Kind kind) {
        const auto hue = std::exchange(pending_, std::nullopt);
        return !hue || place(kind, *hue);
    }

    bool place(Kind kind, Hue hue) {
        if (kind == Kind::marking) {
            return !std::exchange(marking_, hue);
        }
        const auto count = count_ || !single_ ? count_ : std::optional(1);
        count_.reset();
        single_ = false;
        return !std::exchange(stripes_, Stripes{hue, count});
    }

    std::optional<Hue> base_;
    std::optional<Stripes> stripes_;
    std::optional<Hue> marking_;
    std::optional<Hue> pending_;  ///< a second colour whose purpose is not said yet
    Kind waiting_ = Kind::none;   ///< a purpose whose colour is not said yet
    std::optional<int> count_;
    bool single_ = false;
};

}  // namespace

std::string_view hueText(Hue hue) {
    const auto found = std::find_if(
        kHues.begin(), kHues.end(), [&](const HueWord& row) { return row.hue == hue; });
    return found == kHues.end() ? std::string_view() : found->word;
}

std::optional<ColourText> readColour(std::string_view text) {
    Reader reader;
    for (const std::string& word : wordsOf(text)) {
        if (!reader.take(word)) {
            return std::nullopt;
        }
    }
    return reader.result();
}

}  // namespace gw::checks

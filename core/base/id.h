#pragma once

#include <compare>
#include <string>
#include <utility>

namespace gw {

/// A name that refers to one thing in a layout or part, typed so that a block's id cannot be
/// handed to something that wants a conductor's. Letters, digits, '-', '_' and '.', 1 to 40
/// characters, first a letter or digit (isValidId); the readers enforce it.
template <class Tag>
class Id {
public:
    Id() = default;
    explicit Id(std::string text) : text_(std::move(text)) {}

    const std::string& text() const { return text_; }
    bool empty() const { return text_.empty(); }

    friend bool operator==(const Id&, const Id&) = default;
    friend std::strong_ordering operator<=>(const Id& a, const Id& b) {
        return a.text_.compare(b.text_) <=> 0;
    }

private:
    std::string text_;
};

bool isValidId(const std::string& text);

}  // namespace gw

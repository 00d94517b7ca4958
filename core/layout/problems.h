#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"
#include "base/vec3.h"

/// How validate() collects: checks are written one after the other, the first problem stays.
namespace gw::layout {

/// A place in the document, written out only when there is a problem to tell. Made step by step
/// from the one above it, which must outlive it: keep the steps in named values, one each.
class Place {
public:
    Place() = default;
    Place operator/(std::string_view member) const { return {this, member, 0}; }
    Place at(std::size_t index) const { return {this, {}, index}; }
    std::string pointer() const;  ///< JSON pointer; "" for the whole

private:
    Place(const Place* above, std::string_view member, std::size_t index)
        : above_(above), member_(member), index_(index) {}
    const Place* above_ = nullptr;
    std::string_view member_;  ///< empty: an index
    std::size_t index_ = 0;
};

class Problems {
public:
    bool any() const { return first_.has_value(); }
    Result<void> result() const;

    void add(ErrorCode code,
             const Place& place,
             std::string sentence,
             std::string expected = {},
             std::string found = {});

    /// Finite and least <= value <= greatest (in `unit`, for the message).
    void range(const Place& place,
               double value,
               double least,
               double greatest,
               std::string_view unit = {});
    /// Every coordinate finite and within ±1200 in.
    void point(const Place& place, const Vec3& value);
    /// At most 400 bytes, no control characters.
    void text(const Place& place, const std::string& value);
    void text(const Place& place, const std::optional<std::string>& value);

private:
    std::optional<Error> first_;
};

/// `"S1-A"`, cut to about 40 bytes.
std::string quoted(const std::string& text);

}  // namespace gw::layout

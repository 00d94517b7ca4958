#pragma once

#include <string>
#include <string_view>

#include "standards/rows/row.h"
#include "units/wire_size.h"

/// What the look-ups share.
namespace gw::standards {

inline bool isBlank(double cell) {
    return cell == rows::kBlank;
}

template <class T>
Lookup<T> answer(T value, Citation source) {
    return Cited<T>{std::move(value), std::move(source)};
}

template <class T>
Lookup<T> noValue(std::string why, Citation asked) {
    return tl::unexpected<NoValue>(NoValue{std::move(why), std::move(asked)});
}

/// Whether a printed range such as "1/0-2/0", "8" or "-" covers a size.
bool covers(std::string_view range, units::WireSize size);

/// "2026: not checked" for the 2026 edition, else the note itself.
std::string noteFor(Edition edition, std::string note = {});

Citation tableCitation(Edition edition, std::string table, Basis basis, std::string note = {});

}  // namespace gw::standards

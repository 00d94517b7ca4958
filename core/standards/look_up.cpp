#include "standards/look_up.h"

namespace gw::standards {

bool covers(std::string_view range, units::WireSize size) {
    if (range == "-") {
        return false;
    }
    const auto dash = range.find('-');
    const auto first = range.substr(0, dash);
    const auto last = dash == std::string_view::npos ? first : range.substr(dash + 1);
    return units::WireSize::of(first) <= size && size <= units::WireSize::of(last);
}

std::string noteFor(Edition edition, std::string note) {
    if (edition != Edition::nec2026) {
        return note;
    }
    return note.empty() ? "not checked for 2026" : std::move(note) + "; not checked for 2026";
}

Citation tableCitation(Edition edition, std::string table, Basis basis, std::string note) {
    return necCitation(edition, std::move(table), basis, noteFor(edition, std::move(note)));
}

}  // namespace gw::standards

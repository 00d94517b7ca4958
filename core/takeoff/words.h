#pragma once

#include <optional>
#include <string>

#include "layout/layout.h"
#include "takeoff/table.h"

/// How tables name things.
namespace gw::takeoff {

inline const std::string kNotStated = "not stated";

template <class T, class Text>
std::string orNotStated(const std::optional<T>& value, Text text) {
    return value ? std::string(text(*value)) : kNotStated;
}

inline Cell lengthCell(const std::optional<units::Inches>& length) {
    return length ? Cell(length->in()) : Cell();
}

/// As marked, else by id.
inline std::string tagOf(const layout::Conductor& conductor) {
    return conductor.tag.empty() ? conductor.id.text() : conductor.tag;
}
inline std::string nameOf(const layout::Block& block) {
    return block.name.empty() ? block.id.text() : block.name;
}
inline std::string metalOf(const layout::Conductor& conductor) {
    return orNotStated(conductor.metal, standards::metalText);
}
inline std::string insulationOf(const layout::Conductor& conductor) {
    return orNotStated(conductor.insulation, standards::insulationText);
}
inline std::string strandOf(const layout::Conductor& conductor) {
    return orNotStated(conductor.stranding, standards::strandingText);
}
inline std::string colourOf(const layout::Conductor& conductor) {
    return conductor.colour.value_or(kNotStated);
}

}  // namespace gw::takeoff

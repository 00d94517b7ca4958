#include "drawing/names.h"

namespace gw::drawing {

std::string counted(int count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string entryName(const layout::Entry& entry) {
    return entry.name.empty() ? entry.id.text() : entry.name;
}

std::string blockName(const layout::Block& block) {
    return block.name.empty() ? block.id.text() : block.name;
}

std::string tagOf(const layout::Conductor& conductor) {
    return conductor.tag.empty() ? conductor.id.text() : conductor.tag;
}

std::string tagOf(const layout::Layout& layout, const layout::ConductorId& id) {
    for (const auto& conductor : layout.conductors) {
        if (conductor.id == id) {
            return tagOf(conductor);
        }
    }
    return id.text();
}

}  // namespace gw::drawing

#pragma once

#include <string>

#include "layout/layout.h"

/// What the things of a layout are called on a sheet: by their names, else by their ids.
namespace gw::drawing {

template <class Things, class Id>
std::string nameOf(const Things& things, const Id& id) {
    for (const auto& thing : things) {
        if (thing.id == id) {
            return thing.name.empty() ? id.text() : thing.name;
        }
    }
    return id.text();
}

/// "1 set", "3 sets".
std::string counted(int count, const std::string& one, const std::string& many);

std::string entryName(const layout::Entry& entry);
std::string blockName(const layout::Block& block);
/// A conductor's tag, else its id.
std::string tagOf(const layout::Conductor& conductor);
std::string tagOf(const layout::Layout& layout, const layout::ConductorId& id);

}  // namespace gw::drawing

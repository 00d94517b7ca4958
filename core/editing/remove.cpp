#include "editing/remove.h"

#include <algorithm>

#include "editing/place.h"
#include "editing/settle.h"

namespace gw::editing {
namespace {

using geometry::BuiltLayout;
using layout::Conductor;
using layout::Layout;

bool entryGoes(const layout::End& end, const Items& items) {
    const auto* at = std::get_if<layout::AtEntry>(&end);
    return at != nullptr && holds(items, at->entry);
}

bool blockGoes(const layout::End& end, const Items& items) {
    const auto* in = std::get_if<layout::InPort>(&end);
    return in != nullptr && holds(items, in->block);
}

bool goes(const Conductor& conductor, const Items& items) {
    return holds(items, conductor.id) || holds(items, conductor.circuit) ||
           entryGoes(conductor.from, items) || entryGoes(conductor.to, items);
}

bool isFreed(const Conductor& conductor, const Items& items) {
    return blockGoes(conductor.from, items) || blockGoes(conductor.to, items) ||
           std::any_of(conductor.passes.begin(), conductor.passes.end(), [&](const auto& pass) {
               return holds(items, pass.block);
           });
}

layout::Spare cappedAt(const geometry::BuiltEnd& end) {
    constexpr double kOut = 0.5;
    return {end.mouth + end.axis * std::min(kOut, end.leadIn / 2.0)};
}

void freeFrom(Conductor& conductor, const geometry::BuiltConductor& laid, const Items& items) {
    if (blockGoes(conductor.from, items)) {
        conductor.from = cappedAt(laid.from);
    }
    if (blockGoes(conductor.to, items)) {
        conductor.to = cappedAt(laid.to);
    }
    std::erase_if(conductor.passes, [&](const auto& pass) { return holds(items, pass.block); });
}

void dropReferences(Layout& layout) {
    for (auto& circuit : layout.circuits) {
        if (circuit.joins && !indexOf(layout, *circuit.joins)) {
            circuit.joins.reset();
        }
    }
    for (auto& remark : layout.remarks) {
        if (remark.item && !idTaken(layout, *remark.item)) {
            remark.item.reset();
        }
    }
}

std::string count(std::size_t number, const std::string& one, const std::string& many) {
    return std::to_string(number) + " " + (number == 1 ? one : many);
}

}  // namespace

void freeFromAllBut(Conductor& conductor, const geometry::BuiltConductor& laid, const Items& kept) {
    const auto isKept = [&](const layout::End& end) {
        const auto* at = std::get_if<layout::AtEntry>(&end);
        const auto* in = std::get_if<layout::InPort>(&end);
        return (at == nullptr || holds(kept, at->entry)) &&
               (in == nullptr || holds(kept, in->block));
    };
    if (!isKept(conductor.from)) {
        conductor.from = cappedAt(laid.from);
    }
    if (!isKept(conductor.to)) {
        conductor.to = cappedAt(laid.to);
    }
    std::erase_if(conductor.passes, [&](const auto& pass) { return !holds(kept, pass.block); });
}

Dependants dependants(const Layout& layout, const Items& items) {
    Dependants found;
    for (const Conductor& conductor : layout.conductors) {
        if (goes(conductor, items)) {
            if (!holds(items, conductor.id)) {
                found.removed.emplace_back(conductor.id);
            }
        } else if (isFreed(conductor, items)) {
            found.freed.emplace_back(conductor.id);
        }
    }
    return found;
}

std::string dependantsText(const Layout& layout, const Items& items) {
    const Dependants found = dependants(layout, items);
    std::string text;
    if (!found.removed.empty()) {
        text = count(found.removed.size(), "conductor goes with it", "conductors go with it");
    }
    if (!found.freed.empty()) {
        text += (text.empty() ? "" : "; ") +
                count(found.freed.size(), "conductor is freed", "conductors are freed");
    }
    return text;
}

Edit removeItems(const BuiltLayout& built, const Items& items) {
    Layout after = built.layout;
    for (std::size_t i = 0; i < after.conductors.size(); ++i) {
        freeFrom(after.conductors[i], built.conductors[i], items);
    }
    std::erase_if(after.conductors, [&](const auto& one) { return goes(one, items); });
    std::erase_if(after.blocks, [&](const auto& one) { return holds(items, one.id); });
    std::erase_if(after.entries, [&](const auto& one) { return holds(items, one.id); });
    std::erase_if(after.circuits, [&](const auto& one) { return holds(items, one.id); });
    dropReferences(after);
    if (auto valid = accepted(after, built.shelf); !valid) {
        return valid;
    }
    return accepted(settled(built, std::move(after), built.shelf), built.shelf);
}

}  // namespace gw::editing

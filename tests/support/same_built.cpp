#include "support/same_built.h"

#include <algorithm>
#include <tuple>

namespace gw::test_support {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::BuiltPass;

template <class T, class Same>
bool sameAll(const T& a, const T& b, Same same) {
    return std::equal(std::begin(a), std::end(a), std::begin(b), std::end(b), same);
}

auto fieldsOf(const geometry::Piece& piece) {
    return std::tie(piece.origin, piece.u, piece.v, piece.radius, piece.length);
}

auto fieldsOf(const geometry::BuiltPath::Bend& bend) {
    return std::tie(bend.start, bend.radius, bend.turn, bend.corner);
}

auto fieldsOf(const geometry::PathFault& fault) {
    return std::tuple(fault.kind, fault.index, fault.needed.in(), fault.available.in(), fault.at);
}

auto fieldsOf(const BuiltEnd& end) {
    return std::tie(end.kind,
                    end.entry,
                    end.block,
                    end.port,
                    end.mouth,
                    end.axis,
                    end.kink,
                    end.mouthAt,
                    end.leadIn,
                    end.inserted,
                    end.strip,
                    end.intoClosedMouth);
}

auto fieldsOf(const BuiltPass& pass) {
    return std::tie(
        pass.block, pass.port, pass.onAxis, pass.offAxis, pass.nearAt, pass.farAt, pass.window);
}

auto fieldsOf(const geometry::BuiltPort& port) {
    return std::tie(port.mouth, port.direction, port.farMouth);
}

auto fieldsOf(const geometry::BuiltBlock::Screw& screw) {
    return std::tie(screw.head, screw.outward);
}

auto fieldsOf(const geometry::FillSlice& slice) {
    return std::tie(slice.from, slice.conductors, slice.outsideBlocks, slice.blocks);
}

const auto kSameFields = [](const auto& a, const auto& b) { return fieldsOf(a) == fieldsOf(b); };

std::string differenceIn(const BuiltConductor& a, const BuiltConductor& b) {
    if (!sameAll(a.built.path.pieces(), b.built.path.pieces(), kSameFields) ||
        !sameAll(a.built.bends, b.built.bends, kSameFields) ||
        !sameAll(a.built.faults, b.built.faults, kSameFields)) {
        return "path";
    }
    if (!kSameFields(a.from, b.from) || !kSameFields(a.to, b.to)) {
        return "ends";
    }
    if (!sameAll(a.passes, b.passes, kSameFields) || a.inBlocks != b.inBlocks || a.bare != b.bare) {
        return "stretches";
    }
    const bool alike = a.diameter.in() == b.diameter.in() && a.area.in2() == b.area.in2() &&
                       a.diameterSource == b.diameterSource && a.assumed == b.assumed;
    return alike ? "" : "thickness";
}

bool sameBlock(const geometry::BuiltBlock& a, const geometry::BuiltBlock& b) {
    return a.part->id == b.part->id && a.body.least == b.body.least &&
           a.body.greatest == b.body.greatest && sameAll(a.ports, b.ports, kSameFields) &&
           sameAll(a.screws, b.screws, kSameFields) && a.mountingHoles == b.mountingHoles;
}

auto valuesOf(const std::optional<checks::Quantity>& quantity) {
    return quantity ? std::optional(std::pair(quantity->value, quantity->unit)) : std::nullopt;
}

bool sameReading(const checks::Reading& a, const checks::Reading& b) {
    return std::tie(a.name, a.verdict, a.sentence, a.chosen) ==
               std::tie(b.name, b.verdict, b.sentence, b.chosen) &&
           valuesOf(a.measured) == valuesOf(b.measured) && valuesOf(a.limit) == valuesOf(b.limit);
}

std::string differenceIn(const checks::Finding& a, const checks::Finding& b) {
    if (a.check != b.check || a.verdict != b.verdict) {
        return "check or verdict";
    }
    if (a.working != b.working) {
        return "working";
    }
    if (a.subjects != b.subjects || a.place != b.place || a.interval != b.interval) {
        return "subjects or place";
    }
    const bool alike = valuesOf(a.measured) == valuesOf(b.measured) &&
                       valuesOf(a.limit) == valuesOf(b.limit) &&
                       valuesOf(a.margin) == valuesOf(b.margin) && a.citation == b.citation &&
                       a.missing == b.missing && sameAll(a.readings, b.readings, sameReading);
    return alike ? "" : "numbers, citation, missing or readings";
}

}  // namespace

std::string firstDifference(const BuiltLayout& kept, const BuiltLayout& fresh) {
    if (kept.layout != fresh.layout) {
        return "layout";
    }
    if (kept.conductors.size() != fresh.conductors.size() ||
        !sameAll(kept.blocks, fresh.blocks, sameBlock)) {
        return "blocks";
    }
    for (std::size_t i = 0; i < kept.conductors.size(); ++i) {
        const std::string difference = differenceIn(kept.conductors[i], fresh.conductors[i]);
        if (!difference.empty()) {
            return difference + " of conductor " + std::to_string(i);
        }
    }
    return sameAll(kept.fill.slices, fresh.fill.slices, kSameFields) ? "" : "fill";
}

std::string firstDifference(const std::vector<checks::Finding>& kept,
                            const std::vector<checks::Finding>& fresh) {
    for (std::size_t i = 0; i < std::min(kept.size(), fresh.size()); ++i) {
        const std::string difference = differenceIn(kept[i], fresh[i]);
        if (!difference.empty()) {
            return difference + " of finding " + std::to_string(i) + ":\n" + kept[i].working +
                   "\n" + fresh[i].working;
        }
    }
    return kept.size() == fresh.size() ? "" : "number of findings";
}

}  // namespace gw::test_support

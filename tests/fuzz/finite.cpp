#include "fuzz/finite.h"

#include <cmath>

#include "fuzz/require.h"

namespace gw::fuzz {
namespace {

void finite(double value, const char* what) {
    require(std::isfinite(value), std::string("finite: ") + what);
}

void finite(const Vec3& point, const char* what) {
    finite(point.x, what);
    finite(point.y, what);
    finite(point.z, what);
}

void finite(const std::pair<double, double>& stretch, const char* what) {
    finite(stretch.first, what);
    finite(stretch.second, what);
}

void finite(const geometry::BuiltPath& built) {
    require(!built.path.empty(), "a path is not empty");
    finite(built.path.length().in(), "path length");
    for (const auto& piece : built.path.pieces()) {
        finite(piece.origin, "piece origin");
        finite(piece.u, "piece u");
        finite(piece.v, "piece v");
        finite(piece.radius, "piece radius");
        finite(piece.length, "piece length");
        finite(piece.pointAt(piece.length), "piece end");
    }
    for (const auto& bend : built.bends) {
        finite(bend.start, "bend start");
        finite(bend.radius, "bend radius");
        finite(bend.turn, "bend turn");
        finite(bend.corner, "bend corner");
    }
    for (const auto& fault : built.faults) {
        finite(fault.needed.in(), "fault needed");
        finite(fault.available.in(), "fault available");
        finite(fault.at, "fault place");
    }
}

void finite(const geometry::BuiltEnd& end) {
    finite(end.mouth, "end mouth");
    finite(end.axis, "end axis");
    finite(end.kink, "end kink");
    finite(end.mouthAt, "end mouthAt");
    finite(end.leadIn, "end leadIn");
    finite(end.inserted, "end inserted");
    finite(end.strip.value_or(0.0), "end strip");
}

void finite(const geometry::BuiltConductor& conductor) {
    finite(conductor.diameter.in(), "conductor diameter");
    finite(conductor.area.in2(), "conductor area");
    finite(conductor.built);
    finite(conductor.from);
    finite(conductor.to);
    for (const auto& pass : conductor.passes) {
        finite(pass.offAxis, "pass offAxis");
        finite(pass.nearAt, "pass nearAt");
        finite(pass.farAt, "pass farAt");
        finite(pass.window.value_or(std::pair(0.0, 0.0)), "pass window");
    }
    for (const auto& stretch : conductor.inBlocks) {
        finite(stretch, "stretch in blocks");
    }
    for (const auto& stretch : conductor.bare) {
        finite(stretch, "bare stretch");
    }
}

void finite(const geometry::BuiltBlock& block) {
    finite(block.body.least, "block least");
    finite(block.body.greatest, "block greatest");
    for (const auto& port : block.ports) {
        finite(port.mouth, "port mouth");
        finite(port.direction, "port direction");
        finite(port.farMouth, "port far mouth");
    }
    for (const auto& screw : block.screws) {
        finite(screw.head, "screw head");
        finite(screw.outward, "screw outward");
    }
    for (const auto& hole : block.mountingHoles) {
        finite(hole, "mounting hole");
    }
}

void finite(const geometry::BuiltEntry& entry) {
    finite(entry.centre, "entry centre");
    finite(entry.axis, "entry axis");
    finite(entry.bore, "entry bore");
    for (const auto& slot : entry.slots) {
        finite(slot.second, "slot");
    }
}

void finite(const geometry::FillProfile& fill) {
    require(!fill.slices.empty(), "a fill profile has a slice");
    finite(fill.length, "fill length");
    finite(fill.interior, "fill interior");
    for (const auto& slice : fill.slices) {
        finite(slice.from, "slice from");
        finite(slice.conductors, "slice conductors");
        finite(slice.outsideBlocks, "slice outside blocks");
        finite(slice.blocks, "slice blocks");
    }
}

}  // namespace

void requireFinite(const geometry::BuiltLayout& built) {
    for (const auto& entry : built.entries) {
        finite(entry);
    }
    for (const auto& block : built.blocks) {
        finite(block);
    }
    for (const auto& conductor : built.conductors) {
        finite(conductor);
    }
    finite(built.fill);
}

void requireFinite(const checks::Finding& finding) {
    finite(finding.place.value_or(Vec3{}), "finding place");
    finite(finding.interval.value_or(std::pair(0.0, 0.0)), "finding interval");
    for (const auto* quantity : {&finding.measured, &finding.limit, &finding.margin}) {
        finite(quantity->value_or(checks::Quantity{}).value, "finding quantity");
    }
    for (const auto& reading : finding.readings) {
        finite(reading.measured.value_or(checks::Quantity{}).value, "reading measured");
        finite(reading.limit.value_or(checks::Quantity{}).value, "reading limit");
    }
}

}  // namespace gw::fuzz

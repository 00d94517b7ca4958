#include "live/live_findings.h"

#include <algorithm>

namespace gw::live {
namespace {

using checks::Section;
using checks::Unit;
namespace reads = checks::reads;

bool hasAny(unsigned bits, unsigned asked) {
    return (bits & asked) != 0;
}

void add(std::vector<std::size_t>& units, const std::vector<std::size_t>& more) {
    units.insert(units.end(), more.begin(), more.end());
}

/// Whether what a section of the gutter reads is another now.
bool gutterTouched(unsigned bits, const Touched& touched) {
    const bool anyMoved = !touched.moved.empty();
    return (anyMoved &&
            hasAny(bits, reads::kPaths | reads::kFill | reads::kCoverGaps | reads::kSprings)) ||
           (hasAny(bits, reads::kBlocks) && !touched.moved.blocks.empty()) ||
           (hasAny(bits, reads::kLanding) && touched.landing);
}

/// Where its units hang on the paths of their conductors or on where their blocks are.
bool attachedTouched(unsigned bits, const Touched& touched) {
    return hasAny(bits, reads::kPaths) ||
           (hasAny(bits, reads::kBlocks) && !touched.moved.blocks.empty());
}

std::vector<std::size_t> blocksTouched(unsigned bits, const Touched& touched) {
    std::vector<std::size_t> units;
    if (hasAny(bits, reads::kPaths)) {
        add(units, touched.blocks);
    }
    if (hasAny(bits, reads::kBlocks)) {
        add(units, touched.moved.blocks);
    }
    if (hasAny(bits, reads::kBlockRow)) {
        add(units, touched.blockRow);
    }
    if (hasAny(bits, reads::kNeighbours)) {
        add(units, touched.neighbours.blocks);
    }
    if (hasAny(bits, reads::kCorridors)) {
        add(units, touched.corridors);
    }
    return units;
}

/// The units of a section whose findings may be others now, each once.
std::vector<std::size_t> unitsTouched(const Section& section, const Touched& touched) {
    std::vector<std::size_t> units;
    switch (section.unit) {
        case Unit::gutter:
            units.assign(gutterTouched(section.reads, touched) ? 1U : 0U, 0U);
            break;
        case Unit::conductor:
            if (attachedTouched(section.reads, touched)) {
                add(units, touched.moved.conductors);
            }
            if (hasAny(section.reads, reads::kNeighbours)) {
                add(units, touched.neighbours.conductors);
            }
            break;
        case Unit::circuit:
            if (attachedTouched(section.reads, touched)) {
                add(units, touched.circuits);
            }
            if (hasAny(section.reads, reads::kCarrying)) {
                add(units, touched.carrying);
            }
            break;
        case Unit::entry:
            if (attachedTouched(section.reads, touched)) {
                add(units, touched.entries);
            }
            break;
        case Unit::block:
            units = blocksTouched(section.reads, touched);
            break;
    }
    std::sort(units.begin(), units.end());
    units.erase(std::unique(units.begin(), units.end()), units.end());
    return units;
}

}  // namespace

LiveFindings::LiveFindings(const geometry::BuiltLayout& built, const checks::Facts& facts) {
    for (const checks::Check check : checks::allChecks()) {
        for (const Section& section : checks::sectionsOf(check)) {
            SectionFindings found{&section, {}};
            found.units.resize(checks::countOf(section.unit, built));
            for (std::size_t i = 0; i < found.units.size(); ++i) {
                section.find(found.units[i], built, facts, i);
            }
            sections_.push_back(std::move(found));
        }
    }
}

void LiveFindings::findAgain(SectionFindings& kept,
                             const geometry::BuiltLayout& built,
                             const checks::Facts& facts,
                             const std::vector<std::size_t>& units) {
    for (const std::size_t i : units) {
        kept.units[i].clear();
        kept.section->find(kept.units[i], built, facts, i);
    }
}

void LiveFindings::update(const geometry::BuiltLayout& built,
                          const checks::Facts& facts,
                          const Touched& touched) {
    for (SectionFindings& kept : sections_) {
        findAgain(kept, built, facts, unitsTouched(*kept.section, touched));
    }
}

std::vector<checks::Finding> LiveFindings::all() const {
    std::vector<checks::Finding> all;
    for (const SectionFindings& kept : sections_) {
        for (const auto& ofUnit : kept.units) {
            all.insert(all.end(), ofUnit.begin(), ofUnit.end());
        }
    }
    return all;
}

}  // namespace gw::live

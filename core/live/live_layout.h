#pragma once

#include <vector>

#include "base/result.h"
#include "checks/finding.h"
#include "geometry/built_layout.h"
#include "geometry/rebuild.h"
#include "layout/patch.h"
#include "live/live_facts.h"
#include "live/live_findings.h"

/// A layout with its geometry and its findings, kept current while it is edited.
namespace gw::live {

class LiveLayout {
public:
    /// Error as of layout::validate. shelf: all parts at hand, so that blocks can be placed.
    static Result<LiveLayout> create(const layout::Layout& layout, parts::Shelf shelf);

    const layout::Layout& layout() const { return built_.layout; }
    const parts::Shelf& shelf() const { return shelf_; }
    const geometry::BuiltLayout& built() const { return built_; }
    /// As checks::checkAll(built()) gives them. Cost: a copy of each.
    std::vector<checks::Finding> findings() const { return findings_.all(); }

    /// Makes it `after` and says what that changed. Refused, with nothing changed, where
    /// layout::validate refuses it. Cost: a look at everything in the layout, and that of apply().
    Result<layout::Patch> change(const layout::Layout& after);

    /// The same with the difference known already, as undo has it. REQUIRES a patch whose `before`
    /// is this layout and whose `after` is valid. Cost: where conductors and blocks only move, by
    /// what lies near them and is joined to them; else that of building and checking everything.
    void apply(const layout::Patch& patch);

private:
    LiveLayout(const layout::Layout& layout, parts::Shelf shelf);
    void applyMove(const geometry::Things& moved);

    parts::Shelf shelf_;
    geometry::BuiltLayout built_;
    geometry::Rebuilder rebuilder_;
    LiveFacts facts_;
    LiveFindings findings_;
};

}  // namespace gw::live

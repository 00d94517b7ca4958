#pragma once

#include <vector>

#include "base/result.h"
#include "checks/finding.h"
#include "geometry/built_layout.h"
#include "layout/patch.h"

/// A layout with its geometry and its findings, kept current while it is edited.
namespace gw::live {

class LiveLayout {
public:
    /// Error as of layout::validate. shelf: all parts at hand, so that blocks can be placed.
    static Result<LiveLayout> create(const layout::Layout& layout, parts::Shelf shelf);

    const layout::Layout& layout() const { return built_.layout; }
    const parts::Shelf& shelf() const { return shelf_; }
    const geometry::BuiltLayout& built() const { return built_; }
    /// As checks::checkAll(built()) gives them.
    const std::vector<checks::Finding>& findings() const { return findings_; }

    /// Makes it `after` and says what that changed. Refused, with nothing changed, where
    /// layout::validate refuses it.
    Result<layout::Patch> change(const layout::Layout& after);

    /// The same with the difference known already, as undo has it. REQUIRES a patch whose `before`
    /// is this layout and whose `after` is valid.
    void apply(const layout::Patch& patch);

private:
    LiveLayout(const layout::Layout& layout, parts::Shelf shelf);

    parts::Shelf shelf_;
    geometry::BuiltLayout built_;
    std::vector<checks::Finding> findings_;
};

}  // namespace gw::live

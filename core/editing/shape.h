#pragma once

#include <optional>

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// The shape of one conductor's path. Legs are counted from its first end: leg i runs from point i
/// to point i + 1 of tip, corners, tip. Error outOfRange: no such leg or corner.
namespace gw::editing {

/// Sideways (what lies along the leg is left out). Its neighbours keep their directions and grow or
/// shrink; a leg that starts at a raceway or port keeps its straight start, and an offset leads to
/// where it is now.
Edit moveLeg(const geometry::BuiltLayout& built,
             const layout::ConductorId& conductor,
             std::size_t leg,
             const Vec3& by);

/// Both legs at the corner move along with it and keep their directions. The first and the last
/// corner stay on the axis of their raceway or port.
Edit moveCorner(const geometry::BuiltLayout& built,
                const layout::ConductorId& conductor,
                std::size_t corner,
                const Vec3& by);

/// Inches of the centreline, 0 to 600. Without a corner: all of them.
Edit setBendRadius(const geometry::BuiltLayout& built,
                   const layout::ConductorId& conductor,
                   std::optional<std::size_t> corner,
                   units::Inches radius);

/// Its whole run along the gutter to another height or depth (what lies along x is left out).
Edit moveLane(const geometry::BuiltLayout& built,
              const layout::ConductorId& conductor,
              const Vec3& by);

/// A corner on the leg, at the point of it nearest to `at`, with the legal radius; it does not turn
/// until it is moved.
Edit addCorner(const geometry::BuiltLayout& built,
               const layout::ConductorId& conductor,
               std::size_t leg,
               const Vec3& at);
/// The corners next to it are joined by a straight leg.
Edit removeCorner(const geometry::BuiltLayout& built,
                  const layout::ConductorId& conductor,
                  std::size_t corner);

/// Two equal bends of the legal radius, the first at most 30 degrees and no more than it takes,
/// that carry the rest of the conductor sideways by `by`: the middle of them at `at` inches along
/// the leg. What is behind follows; legs keep their directions.
Edit addOffset(const geometry::BuiltLayout& built,
               const layout::ConductorId& conductor,
               std::size_t leg,
               double at,
               const Vec3& by);

}  // namespace gw::editing

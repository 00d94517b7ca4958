#pragma once

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Left for right.
namespace gw::editing {

/// The things mirrored about the middle of the gutter's length. A block is a rigid body: it gets
/// the attitude in which its ports and screws lie most like the mirror image, and where they lie
/// there exactly, its conductors go into the ports that lie where theirs did. Conductors that are
/// selected and end nowhere but in what is mirrored are mirrored whole; others that end in it, or
/// pass it, get a new path. Conductors of one thickness exchange their slots in a mirrored raceway
/// where that is nearer to their mirror image. A circuit stands for its conductors.
/// Error missing: nothing of it can be mirrored.
Edit mirrorItems(const geometry::BuiltLayout& built, const Items& items);

/// The attitude of a block's mirror image, and for each port the one that lies there then.
struct MirroredPort {
    std::size_t port = 0;
    bool turned = false;  ///< its far mouth lies where the near one did
};
struct MirroredBlock {
    Vec3 corner;
    parts::Attitude attitude;
    std::vector<MirroredPort> ports;  ///< as the part's; every port itself where they do not match
    bool exact = false;               ///< all ports lie as in the mirror
};
MirroredBlock mirroredBlock(const geometry::BuiltLayout& built, std::size_t block);

}  // namespace gw::editing

#pragma once

#include <vector>

#include "geometry/built_layout.h"

namespace gw::editing {

/// The room a conductor needs straight before an open mouth of a port: as wide as the bore, as long
/// as NFPA 70 Table 312.6(A) asks for one wire of the largest size the port takes. A guide for
/// placing blocks; what binds is for the checks to say.
struct PortRoom {
    geometry::Box box;
    bool inside = true;  ///< all of it lies in the gutter
};

/// One for each open mouth; none where the part does not state what its port takes, or the table
/// has nothing for it.
std::vector<PortRoom> portRooms(const geometry::BuiltLayout& built, std::size_t block);

}  // namespace gw::editing

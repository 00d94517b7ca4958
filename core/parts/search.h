#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/vec3.h"
#include "parts/part.h"

namespace gw::parts {

/// What someone looks for on the shelf. What is empty is not asked.
struct PartWish {
    std::string words;   ///< each is found in the part's name, family or id, whatever its capitals
    int leastPorts = 0;  ///< ports that take such a conductor as below
    std::optional<units::WireSize> size;
    std::optional<standards::Metal> metal;
    bool fineStrand = false;  ///< listed for some stranding finer than class C
    std::optional<standards::Location> location;
    bool boltsDown = false;      ///< has mounting holes
    std::optional<Vec3> inside;  ///< inches: it lies in a gutter of this inside in some attitude
};

/// A part that does not state what is asked does not suit: nobody may rely on it.
bool suits(const Part& part, const PartWish& wish);

/// "4", "250", "500": of the conductors it takes, the least and the greatest size; empty where no
/// port states it.
struct SizeRange {
    units::WireSize smallest;
    units::WireSize largest;
};
std::optional<SizeRange> sizeRange(const Part& part);

}  // namespace gw::parts

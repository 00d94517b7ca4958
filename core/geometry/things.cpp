#include "geometry/things.h"

#include <numeric>

namespace gw::geometry {

Things allThings(const BuiltLayout& built) {
    Things all{std::vector<std::size_t>(built.conductors.size()),
               std::vector<std::size_t>(built.blocks.size())};
    std::iota(all.conductors.begin(), all.conductors.end(), std::size_t{0});
    std::iota(all.blocks.begin(), all.blocks.end(), std::size_t{0});
    return all;
}

}  // namespace gw::geometry

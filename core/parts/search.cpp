#include "parts/search.h"

#include <algorithm>
#include <cctype>
#include <sstream>

#include "base/tolerance.h"
#include "parts/attitude.h"

namespace gw::parts {
namespace {

std::string lowered(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char letter) {
        return static_cast<char>(std::tolower(letter));
    });
    return text;
}

bool saysAll(const Part& part, const std::string& words) {
    const std::string said = lowered(part.name + ' ' + part.family + ' ' + part.id.text());
    std::istringstream all(lowered(words));
    for (std::string word; all >> word;) {
        if (said.find(word) == std::string::npos) {
            return false;
        }
    }
    return true;
}

template <class Values, class Value>
bool holds(const Values& values, const Value& value) {
    return std::find(values.begin(), values.end(), value) != values.end();
}

/// One row of its wire table must take all of it at once.
bool takes(const PortRange& range, const PartWish& wish) {
    const auto& strands = range.strandings;
    return (!wish.size || (range.smallest <= *wish.size && *wish.size <= range.largest)) &&
           (!wish.metal || holds(range.metals, *wish.metal)) &&
           (!wish.fineStrand || std::any_of(strands.begin(), strands.end(), standards::isFine));
}

bool asksOfPorts(const PartWish& wish) {
    return wish.size || wish.metal || wish.fineStrand;
}

bool hasPorts(const Part& part, const PartWish& wish) {
    const auto suiting = std::count_if(part.ports.begin(), part.ports.end(), [&](const Port& port) {
        return !asksOfPorts(wish) ||
               std::any_of(port.accepts.begin(), port.accepts.end(), [&](const PortRange& range) {
                   return takes(range, wish);
               });
    });
    return suiting >= std::max(wish.leastPorts, asksOfPorts(wish) ? 1 : 0);
}

bool within(const Vec3& extents, const Vec3& inside) {
    return atMost(extents.x, inside.x) && atMost(extents.y, inside.y) &&
           atMost(extents.z, inside.z);
}

bool fits(const Part& part, const Vec3& inside) {
    const auto& attitudes = Attitude::all();
    return std::any_of(attitudes.begin(), attitudes.end(), [&](const Attitude& attitude) {
        return within(attitude.turnedExtents(part.body), inside);
    });
}

}  // namespace

bool suits(const Part& part, const PartWish& wish) {
    return saysAll(part, wish.words) && hasPorts(part, wish) &&
           (!wish.location || holds(part.listing.locations, *wish.location)) &&
           (!wish.boltsDown || !part.mountingHoles.empty()) &&
           (!wish.inside || fits(part, *wish.inside));
}

std::optional<SizeRange> sizeRange(const Part& part) {
    std::optional<SizeRange> all;
    for (const auto& port : part.ports) {
        for (const auto& range : port.accepts) {
            if (!all) {
                all = SizeRange{range.smallest, range.largest};
            }
            all->smallest = std::min(all->smallest, range.smallest);
            all->largest = std::max(all->largest, range.largest);
        }
    }
    return all;
}

}  // namespace gw::parts

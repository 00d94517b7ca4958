#include "editing/bounds.h"

#include <algorithm>
#include <optional>

#include "geometry/section.h"
#include "geometry/solids.h"

namespace gw::editing {
namespace {

using geometry::Box;
using geometry::BuiltLayout;

class Sum {
public:
    explicit Sum(const BuiltLayout& built) : built_(built) {}

    void operator()(const layout::ConductorId& id) { addConductor(indexOf(built_.layout, id)); }
    void operator()(const layout::BlockId& id) {
        if (const auto i = indexOf(built_.layout, id)) {
            add(built_.blocks[*i].body);
        }
    }
    void operator()(const layout::EntryId& id) {
        if (const auto i = indexOf(built_.layout, id)) {
            const auto& entry = built_.entries[*i];
            const double half = entry.bore / 2.0;
            const Vec3 around{half, half, half};
            add({entry.centre - around, entry.centre + around});
        }
    }
    void operator()(const layout::CircuitId& id) {
        for (std::size_t i = 0; i < built_.conductors.size(); ++i) {
            if (built_.layout.conductors[i].circuit == id) {
                addConductor(i);
            }
        }
    }

    Box box() const { return box_.value_or(Box{{}, built_.gutter().inside}); }

private:
    void addConductor(std::optional<std::size_t> index) {
        if (index) {
            const auto& one = built_.conductors[*index];
            const auto& path = one.built.path;
            add(geometry::bounds({&path, one.radius(), 0.0, path.length().in()}));
        }
    }

    void add(const Box& other) {
        if (!box_) {
            box_ = other;
            return;
        }
        const auto& a = *box_;
        box_ = Box{{std::min(a.least.x, other.least.x),
                    std::min(a.least.y, other.least.y),
                    std::min(a.least.z, other.least.z)},
                   {std::max(a.greatest.x, other.greatest.x),
                    std::max(a.greatest.y, other.greatest.y),
                    std::max(a.greatest.z, other.greatest.z)}};
    }

    const BuiltLayout& built_;
    std::optional<Box> box_;
};

}  // namespace

Box boundsOf(const BuiltLayout& built, const Items& items) {
    Sum sum(built);
    for (const Item& item : items) {
        std::visit(sum, item);
    }
    return sum.box();
}

Vec3 inGutter(geometry::View view, double across, double up) {
    switch (view) {
        case geometry::View::front:
            return {across, up, 0.0};
        case geometry::View::top:
            return {across, 0.0, -up};
        case geometry::View::end:
            return {0.0, up, across};
    }
    return {};
}

}  // namespace gw::editing

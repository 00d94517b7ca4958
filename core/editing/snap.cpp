#include "editing/snap.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace gw::editing {
namespace {

using geometry::BuiltLayout;
using geometry::Point2;
using geometry::View;

/// In the order of preference.
enum class Kind { portAxis, entryAxis, block, start, gutterMiddle, wall };

/// What of a body is drawn to a line: its middle to axes, its faces to faces.
enum class Draws { middle, faces };

struct Line {
    double at;
    Kind kind;
    Draws draws;
    std::string what;
};

double part(Point2 point, bool across) {
    return across ? point.x : point.y;
}

/// All lines that attract in one direction of a view.
class Lines {
public:
    Lines(const BuiltLayout& built, View view, bool across, const SnapOptions& options)
        : built_(built), view_(view), across_(across), options_(options) {
        addPorts();
        addEntries();
        addBlocks();
        if (options.from) {
            add(*options.from, Kind::start, Draws::middle, "in line with the start");
            add(*options.from, Kind::start, Draws::faces, "in line with the start");
        }
        const Vec3& inside = built.gutter().inside;
        add(inside * 0.5, Kind::gutterMiddle, Draws::middle, middleName());
        add({}, Kind::wall, Draws::faces, "at the wall");
        add(inside,
            Kind::wall,
            Draws::faces,
            view == View::top && !across ? "at the cover" : "at the wall");
    }

    const std::vector<Line>& all() const { return lines_; }

private:
    void add(const Vec3& point, Kind kind, Draws draws, std::string what) {
        lines_.push_back(
            {part(geometry::project(view_, point), across_), kind, draws, std::move(what)});
    }

    std::string middleName() const {
        return across_              ? "on the middle of the length"
               : view_ == View::top ? "on the middle of the depth"
                                    : "on the middle of the height";
    }

    /// A line in space shows as one across this direction unless it runs along it.
    void addAxis(const Vec3& point, const Vec3& direction, Kind kind, const std::string& what) {
        constexpr double kAlong = 0.5;
        if (std::abs(part(geometry::project(view_, direction), across_)) < kAlong) {
            add(point, kind, Draws::middle, "on the axis of " + what);
        }
    }

    void addPorts() {
        for (std::size_t i = 0; i < built_.blocks.size(); ++i) {
            const Item block = built_.layout.blocks[i].id;
            if (holds(options_.leaveOut, block)) {
                continue;
            }
            for (std::size_t p = 0; p < built_.blocks[i].ports.size(); ++p) {
                const auto& port = built_.blocks[i].ports[p];
                addAxis(port.mouth,
                        port.direction,
                        Kind::portAxis,
                        "port " + built_.blocks[i].part->ports[p].name.text() + " of " +
                            itemName(built_.layout, block));
            }
        }
    }

    void addEntries() {
        for (std::size_t i = 0; i < built_.entries.size(); ++i) {
            const Item entry = built_.layout.entries[i].id;
            if (!holds(options_.leaveOut, entry)) {
                addAxis(built_.entries[i].centre,
                        built_.entries[i].axis,
                        Kind::entryAxis,
                        itemName(built_.layout, entry));
            }
        }
    }

    void addBlocks() {
        for (std::size_t i = 0; i < built_.blocks.size(); ++i) {
            const Item block = built_.layout.blocks[i].id;
            if (holds(options_.leaveOut, block)) {
                continue;
            }
            const std::string name = itemName(built_.layout, block);
            const auto& body = built_.blocks[i].body;
            add(body.least, Kind::block, Draws::faces, "in line with a face of " + name);
            add(body.greatest, Kind::block, Draws::faces, "in line with a face of " + name);
            add(body.centre(), Kind::block, Draws::middle, "in line with the middle of " + name);
        }
    }

    const BuiltLayout& built_;
    View view_;
    bool across_;
    const SnapOptions& options_;
    std::vector<Line> lines_;
};

struct Outcome {
    double at;
    std::optional<double> line;
    std::string what;
};

/// Where the thing's parts lie from the point that is snapped.
std::vector<std::pair<double, Draws>> partsOf(View view, bool across, const SnapOptions& options) {
    if (!options.extents) {
        return {{0.0, Draws::middle}, {0.0, Draws::faces}};
    }
    const double extent = part(geometry::project(view, *options.extents), across);
    return {{extent / 2.0, Draws::middle}, {0.0, Draws::faces}, {extent, Draws::faces}};
}

Outcome snapOne(const Lines& lines,
                double at,
                const std::vector<std::pair<double, Draws>>& parts,
                const SnapOptions& options) {
    constexpr double kAlike = 1.0 / 64.0;
    double best = options.reach;
    const Line* chosen = nullptr;
    double offset = 0.0;
    for (const Line& line : lines.all()) {
        for (const auto& [from, draws] : parts) {
            const double away = std::abs(at + from - line.at);
            const bool nearer = away < best - kAlike;
            const bool preferred = chosen != nullptr && away < best + kAlike &&
                                   away <= options.reach && line.kind < chosen->kind;
            if (draws == line.draws && (nearer || preferred || (!chosen && away <= best))) {
                best = std::min(best, away);
                chosen = &line;
                offset = from;
            }
        }
    }
    if (chosen != nullptr) {
        return {chosen->at - offset, chosen->at, chosen->what};
    }
    return {options.grid > 0.0 ? std::round(at / options.grid) * options.grid : at, {}, {}};
}

}  // namespace

Snapped snap(const BuiltLayout& built, View view, Point2 at, const SnapOptions& options) {
    if (options.held || view == View::end) {
        return {at, {}, {}, {}};
    }
    std::array<Outcome, 2> outcomes;
    for (const bool across : {true, false}) {
        outcomes[across ? 0 : 1] = snapOne(Lines(built, view, across, options),
                                           part(at, across),
                                           partsOf(view, across, options),
                                           options);
    }
    const auto& [a, u] = outcomes;
    const bool both = !a.what.empty() && !u.what.empty() && a.what != u.what;
    return {{a.at, u.at},
            a.what.empty() ? u.what
            : both         ? a.what + ", " + u.what
                           : a.what,
            a.line,
            u.line};
}

}  // namespace gw::editing

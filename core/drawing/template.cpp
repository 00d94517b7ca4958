#include "drawing/template.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/names.h"
#include "drawing/placer.h"
#include "drawing/schedules.h"
#include "drawing/sketch.h"
#include "drawing/wrap.h"

namespace gw::drawing {

using geometry::BuiltLayout;
using layout::Wall;
using takeoff::Hole;
using takeoff::WallHoles;

namespace {

constexpr double kMm = 25.4;
// On inch papers a window comes to whole and half inches, so that the offset each sheet states is
// true.
constexpr double kMargin = 12.7;   // mm: more than printers leave blank
constexpr double kHead = 16.5;     // mm above the window
constexpr double kFoot = 21.6;     // mm below it
constexpr double kOverlap = 12.7;  // mm
constexpr double kAir = 6.35;      // mm between the wall's outline and the first window's edge
constexpr double kMark = 4.0;      // mm, half a joining mark
constexpr double kDrop = 4.2;      // mm from line to line
constexpr double kText = 3.0;      // mm: capitals of 2.2 mm
constexpr double kNumber = 30.0;   // mm at the head's right for the page's number
constexpr double kWarning = 70.0;  // mm before it for breaches

Rect windowOf(Paper paper) {
    const auto sheet = paperSize(paper);
    return {kMargin,
            kMargin + kHead,
            sheet.width - 2.0 * kMargin,
            sheet.height - 2.0 * kMargin - kHead - kFoot};
}

/// How many windows it takes to cover a length.
int windowsOver(double length, double window) {
    const double covered = length + 2.0 * kAir - kOverlap;
    return std::max(1, static_cast<int>(std::ceil(covered / (window - kOverlap) - 1e-9)));
}

/// Millimetres across and down, as the wall is seen.
Point extentOf(Wall wall, const Vec3& inside) {
    switch (wall) {
        case Wall::left:
        case Wall::right:
            return {inside.z * kMm, inside.y * kMm};
        case Wall::top:
        case Wall::bottom:
            return {inside.x * kMm, inside.z * kMm};
        case Wall::back:
            return {inside.x * kMm, inside.y * kMm};
    }
    return {};
}

double radiusOf(const Hole& hole) {
    return hole.diameter ? hole.diameter->in() * kMm / 2.0 : 0.0;
}

Point onSheet(const TemplateTile& tile, const Vec3& inside, const Hole& hole) {
    const auto seen = asSeen(tile.wall, inside, hole.u, hole.v);
    return {tile.wallCorner.x + seen.x * kMm, tile.wallCorner.y + seen.y * kMm};
}

bool reaches(const Rect& window, Point at, double radius) {
    const double dx = at.x - std::clamp(at.x, window.x, window.right());
    const double dy = at.y - std::clamp(at.y, window.y, window.bottom());
    return std::hypot(dx, dy) <= radius;
}

bool within(const Rect& outer, const Rect& inner) {
    return inner.x >= outer.x && inner.y >= outer.y && inner.right() <= outer.right() &&
           inner.bottom() <= outer.bottom();
}

bool wanted(const TemplateOptions& options, Wall wall) {
    return options.walls.empty() ||
           std::find(options.walls.begin(), options.walls.end(), wall) != options.walls.end();
}

// ---- lines that end at the window -------------------------------------------------------------

/// Of a to b what lies in the window (after Liang and Barsky); empty: nothing.
std::optional<std::array<Point, 2>> clipped(const Rect& window, Point a, Point b) {
    double from = 0.0;
    double to = 1.0;
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    const std::array<std::array<double, 2>, 4> sides = {{{-dx, a.x - window.x},
                                                         {dx, window.right() - a.x},
                                                         {-dy, a.y - window.y},
                                                         {dy, window.bottom() - a.y}}};
    for (const auto& [slope, room] : sides) {
        if (slope == 0.0 && room < 0.0) {
            return std::nullopt;
        }
        if (slope < 0.0) {
            from = std::max(from, room / slope);
        } else if (slope > 0.0) {
            to = std::min(to, room / slope);
        }
    }
    if (from >= to) {
        return std::nullopt;
    }
    return {{Point{a.x + from * dx, a.y + from * dy}, Point{a.x + to * dx, a.y + to * dy}}};
}

void line(Sketch& sketch, const Rect& window, Point a, Point b, const Pen& pen) {
    if (const auto seen = clipped(window, a, b)) {
        sketch.line(Stratum::objects, (*seen)[0], (*seen)[1], pen);
    }
}

/// Whole where it fits; else as the chords of it in the window, 1/100 mm off at most.
void ring(Sketch& sketch, const Rect& window, Point at, double radius, const Pen& pen) {
    if (within(window, {at.x - radius, at.y - radius, 2.0 * radius, 2.0 * radius})) {
        sketch.add(Stratum::objects, Circle{at, radius, pen, std::nullopt});
        return;
    }
    constexpr int kChords = 720;
    Point before{at.x + radius, at.y};
    for (int i = 1; i <= kChords; ++i) {
        const double angle = 2.0 * std::acos(-1.0) * i / kChords;
        const Point next{at.x + radius * std::cos(angle), at.y + radius * std::sin(angle)};
        line(sketch, window, before, next, pen);
        before = next;
    }
}

// ---- one sheet --------------------------------------------------------------------------------

Text textAt(Point at, std::string text, double height, Face face = Face::regular) {
    Text made;
    made.at = at;
    made.text = std::move(text);
    made.height = height;
    made.face = face;
    return made;
}

/// The names of the two directions a place is measured in.
struct Edges {
    const char* first;
    const char* second;
};
Edges edgesOf(Wall wall) {
    switch (wall) {
        case Wall::left:
        case Wall::right:
            return {"from the bottom", "from the back"};
        case Wall::top:
        case Wall::bottom:
            return {"from the left end", "from the back"};
        case Wall::back:
            return {"from the left end", "from the bottom"};
    }
    return {"", ""};
}

class TileSheet {
public:
    TileSheet(const BuiltLayout& built,
              const WallHoles& wall,
              const TemplateTile& tile,
              int breaches,
              const TextMetrics& metrics)
        : built_(built),
          wall_(wall),
          tile_(tile),
          breaches_(breaches),
          sketch_(metrics),
          placer_(tile.window) {}

    Drawing draw(Paper paper, std::size_t page, std::size_t pages) {
        drawOutline();
        for (const auto& hole : wall_.holes) {
            drawHole(hole);
        }
        const auto joints = templateJoints(tile_);
        for (const auto& joint : joints) {
            drawJoint(joint.at);
        }
        for (const auto& hole : wall_.holes) {
            nameHole(hole);
        }
        for (const auto& joint : joints) {
            label({joint.name}, joint.at, kMark + 0.5, false);
        }
        drawHead(page, pages);
        drawFoot();
        return std::move(sketch_).finish(paperSize(paper),
                                         "Drilling template, " + built_.layout.title);
    }

private:
    std::string printed(double inches) const {
        return units::formatLength(units::Inches::of(inches), built_.layout.displayUnit);
    }
    const Rect& window() const { return tile_.window; }

    void drawOutline() {
        const auto extent = extentOf(tile_.wall, built_.gutter().inside);
        const Point a = tile_.wallCorner;
        const Point b{a.x + extent.x, a.y + extent.y};
        const auto pen = inkPen(kOutline);
        const std::array<Point, 4> corners = {a, Point{b.x, a.y}, b, Point{a.x, b.y}};
        for (std::size_t i = 0; i < corners.size(); ++i) {
            if (const auto seen = clipped(window(), corners[i], corners[(i + 1) % 4])) {
                sketch_.line(Stratum::objects, (*seen)[0], (*seen)[1], pen);
                placer_.takeLeader((*seen)[0], (*seen)[1], 0.0);
            }
        }
        sketch_.rect(Stratum::frame, window(), inkPen(kThin, Dash::dotted));
    }

    void drawJoint(Point at) {
        const auto pen = inkPen(kThin);
        sketch_.line(Stratum::marks, {at.x - kMark, at.y}, {at.x + kMark, at.y}, pen);
        sketch_.line(Stratum::marks, {at.x, at.y - kMark}, {at.x, at.y + kMark}, pen);
        sketch_.add(Stratum::marks, Circle{at, kMark / 2.0, pen, std::nullopt});
        placer_.keepOff({at.x - kMark, at.y - kMark, 2.0 * kMark, 2.0 * kMark});
    }

    void drawHole(const Hole& hole) {
        const Point at = onSheet(tile_, built_.gutter().inside, hole);
        const double radius = radiusOf(hole);
        const double arm = radius + 5.0;
        if (!reaches(window(), at, arm)) {
            return;
        }
        const auto fine = inkPen(kThin);
        line(sketch_, window(), {at.x - arm, at.y}, {at.x + arm, at.y}, fine);
        line(sketch_, window(), {at.x, at.y - arm}, {at.x, at.y + arm}, fine);
        if (radius > 0.0) {
            ring(sketch_, window(), at, radius, inkPen(kFine));
        }
        placer_.keepOff({at.x - arm, at.y - arm, 2.0 * arm, 2.0 * arm});
    }

    /// On the sheet that has the centre.
    void nameHole(const Hole& hole) {
        const Point at = onSheet(tile_, built_.gutter().inside, hole);
        if (!reaches(window(), at, 0.0)) {
            return;
        }
        const auto edges = edgesOf(tile_.wall);
        const std::string size =
            hole.diameter
                ? hole.size + ", " + units::formatDecimal(hole.diameter->in(), 3) + " in across"
                : hole.size;
        label({hole.what,
               size,
               printed(hole.u) + " " + edges.first,
               printed(hole.v) + " " + edges.second},
              at,
              radiusOf(hole) + 6.0,
              true);
    }

    /// Lines of text beside a place, as near as there is room; with a leader where it is to be told
    /// whose they are. Left out where there is none: the table of holes has them all.
    void label(const std::vector<std::string>& lines, Point at, double clear, bool leads) {
        double width = 0.0;
        for (const auto& one : lines) {
            width = std::max(width, sketch_.metrics().width(one, kText, Face::regular));
        }
        const double height = kDrop * static_cast<double>(lines.size());
        for (double away = clear; away < clear + 120.0; away += 4.0) {
            for (const auto& corner : {Point{away, -height / 2.0},
                                       Point{-away - width, -height / 2.0},
                                       Point{-width / 2.0, away},
                                       Point{-width / 2.0, -away - height},
                                       Point{away * 0.8, away * 0.8},
                                       Point{away * 0.8, -away * 0.8 - height},
                                       Point{-away * 0.8 - width, away * 0.8},
                                       Point{-away * 0.8 - width, -away * 0.8 - height}}) {
                const Rect place{at.x + corner.x, at.y + corner.y, width, height};
                if (within(window(), place) && placer_.isFree(place)) {
                    setLabel(lines, place, at, leads);
                    return;
                }
            }
        }
    }

    void setLabel(const std::vector<std::string>& lines, const Rect& place, Point at, bool leads) {
        placer_.take(place);
        double y = place.y;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            auto text = textAt(
                {place.x, y + 0.6}, lines[i], kText, leads && i == 0 ? Face::bold : Face::regular);
            text.anchorY = AnchorY::top;
            sketch_.text(std::move(text));
            y += kDrop;
        }
        if (leads) {
            const Point end{std::clamp(at.x, place.x, place.right()),
                            std::clamp(at.y, place.y, place.bottom())};
            sketch_.line(Stratum::dimensions, at, end, inkPen(kThin));
            placer_.takeLeader(at, end, 0.0);
        }
    }

    void drawHead(std::size_t page, std::size_t pages) {
        const double top = kMargin + 4.0;
        const std::string kind =
            ": " + std::string(layout::wallText(tile_.wall)) + " wall, full size";
        const double kindWidth = sketch_.metrics().width(kind, 4.2, Face::bold);
        const double room = window().width - kNumber - (breaches_ > 0 ? kWarning : 0.0) - kindWidth;
        sketch_.text(
            textAt({window().x, top},
                   shortened(built_.layout.title, room, 4.2, Face::bold, sketch_.metrics()) + kind,
                   4.2,
                   Face::bold));
        if (breaches_ > 0) {
            auto warning =
                textAt({window().right() - kNumber, top},
                       counted(breaches_, "breach", "breaches") + " found: mend the layout first",
                       kText,
                       Face::bold);
            warning.anchorX = AnchorX::right;
            sketch_.text(std::move(warning));
        }
        sketch_.text(textAt({window().x, top + 5.2}, viewText(tile_.wall), kText));
        sketch_.text(textAt({window().x, top + 5.2 + kDrop}, placeText(), kText));
        auto number = textAt({window().right(), top},
                             "page " + std::to_string(page) + " of " + std::to_string(pages),
                             kText);
        number.anchorX = AnchorX::right;
        sketch_.text(std::move(number));
        auto sheet =
            textAt({window().right(), top + 5.2},
                   "row " + std::to_string(tile_.row + 1) + " of " + std::to_string(tile_.rows) +
                       ", sheet " + std::to_string(tile_.column + 1) + " of " +
                       std::to_string(tile_.columns),
                   kText);
        sheet.anchorX = AnchorX::right;
        sketch_.text(std::move(sheet));
    }

    /// How far the window's left and upper edges lie from the wall's: to set a sheet by itself.
    std::string placeText() const {
        const double across = (window().x - tile_.wallCorner.x) / kMm;
        const double down = (window().y - tile_.wallCorner.y) / kMm;
        return "The dotted frame begins " + printed(across) + " across and " + printed(down) +
               " down from the wall's upper left corner as seen. Sheets without holes are left "
               "out.";
    }

    void drawFoot() {
        const double y = window().bottom() + 7.0;
        const double x = window().x + 1.0;
        bar({x, y}, 4.0 * kMm, 4, "4 in");
        bar({x + 4.0 * kMm + 26.0, y}, 100.0, 10, "100 mm");
        sketch_.text(textAt({window().x, y + 7.5},
                            "Print at 100 %, no scaling. Measure both bars before drilling, and "
                            "every centre again from the wall's edges.",
                            kText,
                            Face::bold));
        sketch_.text(textAt({window().x, y + 7.5 + kDrop},
                            "Knockouts are nominal: use the hub's or locknut's own hole. De-burr; "
                            "keep chips out of live equipment: work de-energised.",
                            kText));
    }

    void bar(Point from, double length, int parts, const char* text) {
        const auto pen = inkPen(kObject);
        sketch_.line(Stratum::marks, from, {from.x + length, from.y}, pen);
        for (int i = 0; i <= parts; ++i) {
            const double x = from.x + length * i / parts;
            const double rise = i == 0 || i == parts ? 4.0 : 2.0;
            sketch_.line(Stratum::marks, {x, from.y}, {x, from.y - rise}, inkPen(kFine));
        }
        sketch_.text(textAt({from.x + length + 2.0, from.y}, text, kText));
    }

    const BuiltLayout& built_;
    const WallHoles& wall_;
    const TemplateTile& tile_;
    int breaches_;
    Sketch sketch_;
    Placer placer_;
};

}  // namespace

Point asSeen(Wall wall, const Vec3& inside, double u, double v) {
    switch (wall) {
        case Wall::left:
            return {v, inside.y - u};
        case Wall::right:
            return {inside.z - v, inside.y - u};
        case Wall::top:
            return {u, v};
        case Wall::bottom:
            return {u, inside.z - v};
        case Wall::back:
            return {u, inside.y - v};
    }
    return {};
}

const char* viewText(Wall wall) {
    switch (wall) {
        case Wall::left:
            return "Seen from outside, from the left: top up, cover side at the right.";
        case Wall::right:
            return "Seen from outside, from the right: top up, cover side at the left.";
        case Wall::top:
            return "Seen from outside, from above: left end at the left, back at the top.";
        case Wall::bottom:
            return "Seen from outside, from below: left end at the left, cover side at the top.";
        case Wall::back:
            return "Seen from inside, from the cover side: left end at the left, top up.";
    }
    return "";
}

std::vector<TemplateTile> templateTiles(const BuiltLayout& built, const TemplateOptions& options) {
    const Vec3& inside = built.gutter().inside;
    const Rect window = windowOf(options.paper);
    std::vector<TemplateTile> tiles;
    for (const auto& wall : takeoff::wallHoles(built)) {
        const auto extent = extentOf(wall.wall, inside);
        const int columns = windowsOver(extent.x, window.width);
        const int rows = windowsOver(extent.y, window.height);
        for (int at = 0; at < columns * rows && wanted(options, wall.wall); ++at) {
            const int column = at % columns;
            const int row = at / columns;
            const TemplateTile tile{wall.wall,
                                    column,
                                    row,
                                    columns,
                                    rows,
                                    window,
                                    {window.x + kAir - column * (window.width - kOverlap),
                                     window.y + kAir - row * (window.height - kOverlap)}};
            const bool drilled =
                std::any_of(wall.holes.begin(), wall.holes.end(), [&](const Hole& hole) {
                    return reaches(window, onSheet(tile, inside, hole), radiusOf(hole));
                });
            if (drilled) {
                tiles.push_back(tile);
            }
        }
    }
    return tiles;
}

/// Two in the middle of each overlap: "R1.0a" where column 1 joins the one before in row 0, "C0.1a"
/// where row 1 joins the one above in column 0.
std::vector<TemplateJoint> templateJoints(const TemplateTile& tile) {
    const Rect& window = tile.window;
    const double half = kOverlap / 2.0;
    std::vector<TemplateJoint> joints;
    const auto add = [&](char kind, int column, int row, double share, Point at) {
        joints.push_back({std::string(1, kind) + std::to_string(column) + "." +
                              std::to_string(row) + (share > 0.5 ? "b" : "a"),
                          at});
    };
    for (const double share : {0.25, 0.75}) {
        const double x = window.x + window.width * share;
        const double y = window.y + window.height * share;
        if (tile.column > 0) {
            add('R', tile.column, tile.row, share, {window.x + half, y});
        }
        if (tile.column + 1 < tile.columns) {
            add('R', tile.column + 1, tile.row, share, {window.right() - half, y});
        }
        if (tile.row > 0) {
            add('C', tile.column, tile.row, share, {x, window.y + half});
        }
        if (tile.row + 1 < tile.rows) {
            add('C', tile.column, tile.row + 1, share, {x, window.bottom() - half});
        }
    }
    return joints;
}

std::vector<Drawing> drillingTemplate(const BuiltLayout& built,
                                      const std::vector<checks::Finding>& findings,
                                      const TemplateOptions& options,
                                      const TextMetrics& metrics) {
    const int breaches = checks::tally(findings).breach;
    const auto walls = takeoff::wallHoles(built);
    const auto tiles = templateTiles(built, options);
    std::vector<Drawing> pages;
    for (const auto& tile : tiles) {
        const auto wall = std::find_if(walls.begin(), walls.end(), [&](const WallHoles& one) {
            return one.wall == tile.wall;
        });
        pages.push_back(TileSheet(built, *wall, tile, breaches, metrics)
                            .draw(options.paper, pages.size() + 1, tiles.size()));
    }
    return pages;
}

}  // namespace gw::drawing

#include "geometry/section.h"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>

#include "base/tolerance.h"

namespace gw::geometry {
namespace {

namespace bg = boost::geometry;
using BoostPoint = bg::model::d2::point_xy<double>;
using BoostPolygon = bg::model::polygon<BoostPoint, false, true>;  // anticlockwise, closed
using BoostShapes = bg::model::multi_polygon<BoostPolygon>;

constexpr double kPi = 3.14159265358979323846;
constexpr double kFlatness = 0.005;  // inches an outline may stray from the true curve

// ---- silhouettes -----------------------------------------------------------------------------

/// Boost's union fails on coordinates that differ in the last bits only: snap them.
BoostPoint snapped(double x, double y) {
    constexpr double kGrid = 1e-6;
    return {std::round(x / kGrid) * kGrid, std::round(y / kGrid) * kGrid};
}

void addPoint(BoostPolygon& polygon, const BoostPoint& p) {
    bg::append(polygon, p);
}

/// A round-ended strip of half width r from a to b.
BoostPolygon strip(const Point2& a, const Point2& b, double r) {
    constexpr int kHalf = 16;
    const double along = std::atan2(b.y - a.y, b.x - a.x);
    BoostPolygon polygon;
    for (int i = 0; i <= kHalf; ++i) {
        const double angle = along - kPi / 2.0 + kPi * i / kHalf;
        addPoint(polygon, snapped(b.x + r * std::cos(angle), b.y + r * std::sin(angle)));
    }
    for (int i = 0; i <= kHalf; ++i) {
        const double angle = along + kPi / 2.0 + kPi * i / kHalf;
        addPoint(polygon, snapped(a.x + r * std::cos(angle), a.y + r * std::sin(angle)));
    }
    bg::correct(polygon);
    return polygon;
}

Outline toOutline(const BoostPolygon& polygon) {
    Outline outline;
    const auto& ring = polygon.outer();
    for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
        outline.push_back({ring[i].x(), ring[i].y()});
    }
    return outline;
}

// ---- sections --------------------------------------------------------------------------------

/// The tube about arc length s as a disc square to the centreline, and how far it reaches along x.
struct Disc {
    Vec3 centre;
    Vec3 tangent;
    double half;  ///< of its extent along x
};

Disc discAt(const Path& path, double s, double r) {
    const Vec3 t = path.tangentAt(s);
    return {path.pointAt(s), t, r * std::sqrt(std::max(0.0, 1.0 - t.x * t.x))};
}

bool cuts(const Disc& disc, double x) {
    return std::abs(disc.centre.x - x) <= disc.half + 1e-9;
}

/// The chord in which the disc meets the plane: its two ends, in (z, y).
std::pair<Point2, Point2> chordOf(const Disc& disc, double x, double r) {
    const Vec3 toX = Vec3{1.0, 0.0, 0.0} - disc.tangent * disc.tangent.x;
    const double slope = norm(toX);
    const Vec3 up = toX / slope;                 // steepest way along x within the disc
    const Vec3 aside = cross(disc.tangent, up);  // lies in the plane
    const double rise = std::clamp((x - disc.centre.x) / slope, -r, r);
    const double reach = std::sqrt(std::max(0.0, r * r - rise * rise));
    const Vec3 middle = disc.centre + up * rise;
    const Vec3 a = middle + aside * reach;
    const Vec3 b = middle - aside * reach;
    return {{a.z, a.y}, {b.z, b.y}};
}

/// Where a straight run passes square or slanting: an ellipse of semi-axes r and r/|t.x|.
Outline ellipse(const Vec3& centre, const Vec3& tangent, double r) {
    constexpr int kPoints = 48;
    const double slant = std::hypot(tangent.y, tangent.z);
    const Point2 along = slant > 1e-9 ? Point2{tangent.z / slant, tangent.y / slant} : Point2{1, 0};
    const double major = r / std::abs(tangent.x);
    Outline outline;
    for (int i = 0; i < kPoints; ++i) {
        const double angle = 2.0 * kPi * i / kPoints;
        const double a = major * std::cos(angle);
        const double b = r * std::sin(angle);
        outline.push_back(
            {centre.z + along.x * a - along.y * b, centre.y + along.y * a + along.x * b});
    }
    return outline;
}

double signedArea(const Outline& outline) {
    double twice = 0.0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const auto& p = outline[i];
        const auto& q = outline[(i + 1) % outline.size()];
        twice += p.x * q.y - q.x * p.y;
    }
    return twice * 0.5;
}

void makeAnticlockwise(Outline& outline) {
    if (signedArea(outline) < 0.0) {
        std::reverse(outline.begin(), outline.end());
    }
}

/// Outline swept by the chords from arc length a to b.
Outline sweep(const Path& path, double x, double r, double a, double b) {
    constexpr int kSteps = 40;
    std::vector<Point2> one;
    std::vector<Point2> other;
    for (int i = 0; i <= kSteps; ++i) {
        const auto disc = discAt(path, a + (b - a) * i / kSteps, r);
        const auto [p, q] = chordOf(disc, x, r);
        one.push_back(p);
        other.push_back(q);
    }
    Outline outline = one;
    outline.insert(outline.end(), other.rbegin(), other.rend());
    makeAnticlockwise(outline);
    return outline;
}

/// A leg that runs along x has one point of its axis on the plane; its cut is an ellipse.
bool runsAlong(const Disc& disc) {
    return std::abs(disc.tangent.x) > 0.2;
}

/// Arc lengths where the tube starts or stops being cut, found on a fine walk and halved to 1e-6.
double edgeBetween(const Path& path, double x, double r, double out, double in) {
    for (int i = 0; i < 40; ++i) {
        const double middle = (out + in) * 0.5;
        (cuts(discAt(path, middle, r), x) ? in : out) = middle;
    }
    return in;
}

CutConductor cutOf(std::size_t index, const Path& path, double x, double r, double a, double b) {
    CutConductor cut;
    cut.conductor = index;
    const auto middle = discAt(path, (a + b) * 0.5, r);
    if (runsAlong(middle) && b - a < 2.2 * r) {
        // The point of the axis on the plane itself.
        const double s = (a + b) * 0.5 + (x - middle.centre.x) / middle.tangent.x;
        const auto there = discAt(path, std::clamp(s, 0.0, path.length().in()), r);
        cut.outline = ellipse(there.centre, there.tangent, r);
        makeAnticlockwise(cut.outline);
        cut.centre = {there.centre.z, there.centre.y};
    } else {
        cut.outline = sweep(path, x, r, a, b);
        cut.centre = {middle.centre.z, middle.centre.y};
    }
    return cut;
}

/// Every connected part of a conductor that the plane cuts.
std::vector<CutConductor> cutsOf(std::size_t index, const BuiltConductor& conductor, double x) {
    std::vector<CutConductor> found;
    const Path& path = conductor.built.path;
    if (path.empty()) {
        return found;
    }
    const double r = conductor.radius();
    const double length = path.length().in();
    // Crossings of the plane by the axis are looked for as well as discs that reach it: a run along
    // x has discs of no extent along x.
    const double step = std::min(0.05, length / 8.0);
    const auto side = [&](double s) { return path.pointAt(s).x - x; };
    std::optional<double> begin;
    double last = 0.0;
    const auto close = [&](double end) {
        if (begin) {
            found.push_back(cutOf(index, path, x, r, *begin, end));
            begin.reset();
        }
    };
    for (double s = 0.0;; s = std::min(s + step, length)) {
        const bool cut = cuts(discAt(path, s, r), x);
        const bool crossed = s > 0.0 && side(last) * side(s) < 0.0;
        if (cut && !begin) {
            begin = s > 0.0 ? edgeBetween(path, x, r, last, s) : 0.0;
        } else if (!cut && begin) {
            close(edgeBetween(path, x, r, s, last));
        } else if (!cut && crossed) {
            const double t = side(last) / (side(last) - side(s));
            const double at = last + (s - last) * t;
            found.push_back(cutOf(index, path, x, r, at, at));
        }
        if (s >= length) {
            close(length);
            return found;
        }
        last = s;
    }
}

Outline rectangle(const Box& box) {
    return {{box.least.z, box.least.y},
            {box.greatest.z, box.least.y},
            {box.greatest.z, box.greatest.y},
            {box.least.z, box.greatest.y}};
}

}  // namespace

Point2 project(View view, const Vec3& point) {
    switch (view) {
        case View::front:
            return {point.x, point.y};
        case View::top:
            return {point.x, -point.z};
        case View::end:
            return {point.z, point.y};
    }
    return {};
}

double nearness(View view, const Vec3& point) {
    switch (view) {
        case View::front:
            return point.z;
        case View::top:
            return point.y;
        case View::end:
            return -point.x;
    }
    return 0.0;
}

std::vector<Outline> silhouette(const BuiltConductor& conductor, View view) {
    BoostShapes whole;
    const auto points = conductor.built.path.flattened(kFlatness);
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const auto piece =
            strip(project(view, points[i]), project(view, points[i + 1]), conductor.radius());
        BoostShapes joined;
        bg::union_(whole, piece, joined);
        whole = std::move(joined);
    }
    std::vector<Outline> outlines;
    for (const auto& shape : whole) {
        outlines.push_back(toOutline(shape));
    }
    return outlines;
}

Section sectionAt(const BuiltLayout& built, double x) {
    Section section;
    section.x = x;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        for (auto& cut : cutsOf(i, built.conductors[i], x)) {
            section.conductors.push_back(std::move(cut));
        }
    }
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        const auto& body = built.blocks[i].body;
        if (body.least.x <= x && x <= body.greatest.x) {
            section.blocks.push_back({i, rectangle(body)});
        }
    }
    return section;
}

double outlineArea(const Outline& outline) {
    return std::abs(signedArea(outline));
}

}  // namespace gw::geometry

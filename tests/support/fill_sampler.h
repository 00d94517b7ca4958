#pragma once

#include <span>
#include <vector>

#include "geometry/fill.h"

/// Conductor fill the plain way: a plane every so often, and a count of the connected parts that it
/// cuts. Reference for tests and peer for benchmarks; shares nothing with the program's sweep.
namespace gw::test_support {

class FillSampler {
public:
    /// Legs stay whole; arcs are cut at most every `arcStep` radians.
    FillSampler(std::span<const geometry::FillConductor> conductors, double arcStep);

    /// Square inches of conductor at plane x, all parts counted.
    double areaAt(double x) const;
    /// Greatest over x = first, first + step, … below length.
    double peak(double first, double step, double length) const;

private:
    struct Span {
        double low = 0.0;
        double high = 0.0;
        bool holds(double x) const { return low <= x && x <= high; }
    };
    struct Group {  ///< a leg, or the cuts of an arc; passed over as one when x is outside
        Span all;
        std::size_t first = 0;
        std::size_t last = 0;
    };
    struct Conductor {
        double area = 0.0;
        Span all;
        std::vector<Group> groups;
        std::vector<Span> spans;  ///< in order along the path
        int partsAt(double x) const;
    };
    static Conductor sample(const geometry::FillConductor& conductor, double arcStep);
    std::vector<Conductor> conductors_;
};

}  // namespace gw::test_support

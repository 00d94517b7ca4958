#include "core/routing/dense_verifier.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace gw::routing::test {
namespace {

constexpr double kStep = 1.0 / 32.0;  // inches
constexpr double kTolerance = 0.003;  // inches

struct Sample {
    Vec3 at;
    Vec3 along;  ///< unit
    double s = 0.0;
};

/// A leg or arc as points; s goes on.
class Sampler {
public:
    std::vector<Sample> samples;

    void leg(const Vec3& from, const Vec3& to) {
        const double length = distance(from, to);
        if (length < 1e-9) {
            return;
        }
        const int steps = static_cast<int>(length / kStep) + 1;
        for (int i = 0; i <= steps; ++i) {
            const double t = static_cast<double>(i) / steps;
            samples.push_back({from + (to - from) * t, (to - from) / length, s_ + length * t});
        }
        s_ += length;
    }

    void arc(const Vec3& corner, const Vec3& in, const Vec3& out, double radius, double turn) {
        const double tangent = radius * std::tan(turn / 2.0);
        const Vec3 start = corner - in * tangent;
        const Vec3 toCentre = unit(out - in * dot(out, in));
        const Vec3 centre = start + toCentre * radius;
        const int steps = static_cast<int>(radius * turn / kStep) + 1;
        for (int i = 0; i <= steps; ++i) {
            const double angle = turn * i / steps;
            samples.push_back(
                {centre - toCentre * (radius * std::cos(angle)) + in * (radius * std::sin(angle)),
                 in * std::cos(angle) + toCentre * std::sin(angle),
                 s_ + radius * angle});
        }
        s_ += radius * turn;
    }

private:
    double s_ = 0.0;
};

struct Line {
    std::vector<Sample> samples;
    double length = 0.0;
    double radius = 0.0;  ///< of the tube
    std::string name;
    const geometry::BuiltConductor* conductor = nullptr;
};

class Verifier {
public:
    Verifier(const geometry::BuiltLayout& built, const std::vector<std::size_t>& conductors)
        : built_(built) {
        for (const std::size_t i : conductors) {
            lines_.push_back(lineOf(i));
        }
    }

    std::vector<std::string> run() {
        for (const Line& line : lines_) {
            walls(line);
            blocks(line);
        }
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            for (std::size_t j = i + 1; j < lines_.size(); ++j) {
                pair(lines_[i], lines_[j]);
            }
        }
        return std::move(faults_);
    }

private:
    void fault(const std::string& sentence) { faults_.push_back(sentence); }

    Line lineOf(std::size_t index) {
        const auto& laid = built_.layout.conductors[index];
        const auto& conductor = built_.conductors[index];
        Line line{{}, 0.0, conductor.diameter.in() / 2.0, laid.tag, &conductor};
        std::vector<Vec3> points{conductor.from.mouth -
                                 conductor.from.axis * conductor.from.inserted};
        for (const auto& corner : laid.corners) {
            points.push_back(corner.at);
        }
        points.push_back(conductor.to.mouth - conductor.to.axis * conductor.to.inserted);
        Sampler sampler;
        double before = 0.0;
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const Vec3 in = unit(points[i + 1] - points[i]);
            const double length = distance(points[i], points[i + 1]);
            double next = 0.0;
            double turn = 0.0;
            Vec3 out = in;
            const bool corner = i + 2 < points.size();
            const double radius = corner ? laid.corners[i].radius.in() : 0.0;
            if (corner) {
                out = unit(points[i + 2] - points[i + 1]);
                turn = std::acos(std::clamp(dot(in, out), -1.0, 1.0));
                next = radius * std::tan(turn / 2.0);
                bend(line, radius);
            }
            if (length < before + next - kTolerance) {
                fault(line.name + " has a leg too short for its bends");
            }
            sampler.leg(points[i] + in * before, points[i + 1] - in * next);
            if (corner) {
                sampler.arc(points[i + 1], in, out, radius, turn);
            }
            before = next;
        }
        line.samples = std::move(sampler.samples);
        line.length = line.samples.back().s;
        leaves(line, points);
        return line;
    }

    /// The training rule for thin insulation: at the inner surface 4 diameters up to 1 in, 5 up to
    /// 2 in (ICEA S-95-658/NEMA WC 70, from memory).
    void bend(const Line& line, double radius) {
        const double diameter = 2.0 * line.radius;
        const double least = (diameter <= 1.0 ? 4.5 : 5.5) * diameter;
        if (radius < least - kTolerance) {
            fault(line.name + " is bent too tightly");
        }
    }

    /// Straight out of ports for a diameter, and along the axis everywhere.
    void leaves(const Line& line, const std::vector<Vec3>& points) {
        const auto& c = *line.conductor;
        if (dot(unit(points[1] - points[0]), c.from.axis) < 1.0 - 1e-6 ||
            dot(unit(points[points.size() - 2] - points.back()), c.to.axis) < 1.0 - 1e-6) {
            fault(line.name + " does not leave along the axis");
        }
        const double from = straightOf(line, true);
        const double to = straightOf(line, false);
        if ((c.from.block && from < c.from.inserted + 2.0 * line.radius - kTolerance) ||
            (c.to.block && to < c.to.inserted + 2.0 * line.radius - kTolerance)) {
            fault(line.name + " has too short a lead-in");
        }
    }

    static double straightOf(const Line& line, bool atStart) {
        const std::size_t n = line.samples.size();
        const Vec3 first = line.samples[atStart ? 0 : n - 1].along;
        for (std::size_t k = 0; k < n; ++k) {
            const Sample& sample = line.samples[atStart ? k : n - 1 - k];
            if (dot(sample.along, first) < 1.0 - 1e-7) {
                return atStart ? sample.s : line.length - sample.s;
            }
        }
        return line.length;
    }

    /// A tube reaches as far beyond its centreline as its disc does.
    void walls(const Line& line) {
        const Vec3& in = built_.layout.gutter.inside;
        for (const Sample& sample : line.samples) {
            const auto outside = [&](double at, double along, double inside) {
                const double reach = line.radius * std::sqrt(std::max(0.0, 1.0 - along * along));
                return at < reach - kTolerance || at > inside - reach + kTolerance;
            };
            if (outside(sample.at.x, sample.along.x, in.x) ||
                outside(sample.at.y, sample.along.y, in.y) ||
                outside(sample.at.z, sample.along.z, in.z)) {
                fault(line.name + " goes through a wall or the cover at x " +
                      std::to_string(sample.at.x));
                return;
            }
        }
    }

    static double toBox(const Vec3& p, const geometry::Box& box) {
        const auto gap = [](double low, double at, double high) {
            return std::max({0.0, low - at, at - high});
        };
        return norm({gap(box.least.x, p.x, box.greatest.x),
                     gap(box.least.y, p.y, box.greatest.y),
                     gap(box.least.z, p.z, box.greatest.z)});
    }

    /// Where the block holds it, with a little beyond the mouth: what the round end of the tube
    /// would touch.
    static bool isHeldBy(const Line& line, const Sample& sample, std::size_t block) {
        const auto& c = *line.conductor;
        const double more = 1.51 * line.radius;
        return (c.from.block == block && sample.s < c.from.inserted + more) ||
               (c.to.block == block && line.length - sample.s < c.to.inserted + more);
    }

    void blocks(const Line& line) {
        for (std::size_t b = 0; b < built_.blocks.size(); ++b) {
            for (const Sample& sample : line.samples) {
                if (!isHeldBy(line, sample, b) &&
                    toBox(sample.at, built_.blocks[b].body) < line.radius - kTolerance) {
                    fault(line.name + " goes through block " + built_.layout.blocks[b].name);
                    break;
                }
            }
        }
    }

    static bool isInBore(const Line& line, const Sample& sample) {
        const auto& c = *line.conductor;
        return (c.from.block && sample.s < c.from.inserted) ||
               (c.to.block && line.length - sample.s < c.to.inserted);
    }

    void pair(const Line& a, const Line& b) {
        const double least = a.radius + b.radius - kTolerance;
        for (const Sample& p : a.samples) {
            if (isInBore(a, p)) {
                continue;
            }
            for (const Sample& q : b.samples) {
                if (squaredNorm(p.at - q.at) < least * least && !isInBore(b, q)) {
                    fault(a.name + " and " + b.name + " overlap at x " + std::to_string(p.at.x) +
                          " by " + std::to_string(least - distance(p.at, q.at)));
                    return;
                }
            }
        }
    }

    const geometry::BuiltLayout& built_;
    std::vector<Line> lines_;
    std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> faultsOf(const geometry::BuiltLayout& built,
                                  const std::vector<std::size_t>& conductors) {
    return Verifier(built, conductors).run();
}

}  // namespace gw::routing::test

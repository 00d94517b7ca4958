#include "drawing/subject.h"

#include <algorithm>

namespace gw::drawing {
namespace {

bool isIn(const layout::Entry& entry, const std::vector<layout::Wall>& walls) {
    return std::find(walls.begin(), walls.end(), entry.wall) != walls.end();
}

double component(const Vec3& point, int axis) {
    return axis == 0 ? point.x : axis == 1 ? point.y : point.z;
}

}  // namespace

bool Subject::hasEntries(layout::Wall wall) const {
    const auto& entries = layout().entries;
    return std::any_of(entries.begin(), entries.end(), [&](const layout::Entry& entry) {
        return entry.wall == wall;
    });
}

std::string entryHead(const layout::Entry& entry) {
    std::string head = entryName(entry) + ":";
    head +=
        entry.tradeSize ? " " + std::string(entry.tradeSize->text()) + " in" : " size not stated";
    if (entry.raceway) {
        head += " " + std::string(standards::racewayText(*entry.raceway));
    }
    return head;
}

std::vector<EntryLabel> labelsOf(const Subject& subject, layout::Wall wall, double mmPerInch) {
    std::vector<EntryLabel> labels;
    const auto& entries = subject.layout().entries;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (entries[i].wall == wall) {
            labels.push_back({subject.built->entries[i].centre.x * mmPerInch,
                              entryHead(entries[i]),
                              entries[i].leadsTo});
        }
    }
    return labels;
}

std::vector<double> entryPlaces(const Subject& subject,
                                const std::vector<layout::Wall>& walls,
                                int axis) {
    std::vector<double> places;
    const auto& entries = subject.layout().entries;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (isIn(entries[i], walls)) {
            places.push_back(component(subject.built->entries[i].centre, axis));
        }
    }
    std::sort(places.begin(), places.end());
    places.erase(
        std::unique(
            places.begin(), places.end(), [](double a, double b) { return b - a < 1.0 / 64; }),
        places.end());
    return places;
}

Running runningOf(const std::vector<double>& inches,
                  const Subject& subject,
                  double datum,
                  double mmPerInch,
                  double sign) {
    Running running;
    running.datum = datum;
    for (const double place : inches) {
        running.at.push_back(datum + sign * place * mmPerInch);
        running.texts.push_back(dimensionText(place, subject.layout().displayUnit));
    }
    return running;
}

}  // namespace gw::drawing

#include "drawing/details.h"

#include <algorithm>

#include "drawing/key.h"
#include "drawing/long_views.h"
#include "drawing/section_view.h"

namespace gw::drawing {
namespace {

constexpr double kBetween = 7.0;  // mm between details, either way

Rect bodySize(const Subject& subject,
              const Detail& detail,
              const Scale& scale,
              const TextMetrics& metrics) {
    switch (detail.kind) {
        case Detail::Kind::endView:
            return endViewSize(*subject.built, scale.mmPerInch(), subject.sizes);
        case Detail::Kind::section:
            return sectionSize(
                *subject.built, {detail.mark.x, scale.mmPerInch(), subject.sizes}, metrics);
        case Detail::Kind::key:
            return keySize(subject);
    }
    return {};
}

/// What stands beside the title: where a section is cut, and the scale.
std::string scaleText(const Subject& subject, const Detail& detail, const Scale& scale) {
    switch (detail.kind) {
        case Detail::Kind::key:
            return "";
        case Detail::Kind::endView:
            return std::string(scale.text);
        case Detail::Kind::section:
            return "at " + dimensionText(detail.mark.x, subject.layout().displayUnit) +
                   " from the left, " + std::string(scale.text);
    }
    return "";
}

/// Its body with the title under it, and no narrower than the title.
Rect fullSize(const Subject& subject,
              const Detail& detail,
              const Scale& scale,
              const TextMetrics& metrics) {
    auto size = bodySize(subject, detail, scale, metrics);
    const double title =
        metrics.width(detail.title, subject.sizes.title, Face::bold) + 3.0 +
        metrics.width(scaleText(subject, detail, scale), subject.sizes.body, Face::regular);
    return {0, 0, std::max(size.width, title), size.height + 1.0 + viewTitleHeight(subject.sizes)};
}

/// Fills shelves from the left; empty when the room is too small.
std::optional<std::vector<Rect>> shelve(const std::vector<Rect>& sizes, const Rect& room) {
    std::vector<Rect> places;
    double x = room.x;
    double y = room.y;
    double shelf = 0.0;
    for (const auto& size : sizes) {
        if (x > room.x && x + size.width > room.right()) {
            x = room.x;
            y += shelf + kBetween;
            shelf = 0.0;
        }
        const Rect place{x, y, size.width, size.height};
        if (!holds(grown(room, 1e-6), place)) {
            return std::nullopt;
        }
        places.push_back(place);
        x += size.width + kBetween;
        shelf = std::max(shelf, size.height);
    }
    return places;
}

/// Details of one shelf stand on one line: their titles are level.
void alignFeet(std::vector<Rect>& places) {
    for (auto& place : places) {
        double foot = place.bottom();
        for (const auto& other : places) {
            foot = other.y == place.y ? std::max(foot, other.bottom()) : foot;
        }
        place.height = foot - place.y;
    }
}

void drawDetail(Sketch& sketch,
                const Subject& subject,
                const Detail& detail,
                const Scale& scale,
                const Rect& place) {
    const auto body = bodySize(subject, detail, scale, sketch.metrics());
    const double titleTop = place.bottom() - viewTitleHeight(subject.sizes);
    const Point corner{place.x, titleTop - 1.0 - body.height};
    switch (detail.kind) {
        case Detail::Kind::endView:
            drawEndView(sketch, *subject.built, scale.mmPerInch(), subject.sizes, corner);
            break;
        case Detail::Kind::section:
            drawSection(
                sketch, *subject.built, {detail.mark.x, scale.mmPerInch(), subject.sizes}, corner);
            break;
        case Detail::Kind::key:
            drawKey(sketch, subject, corner);
            break;
    }
    drawViewTitle(sketch,
                  {place.x, titleTop},
                  detail.title,
                  scaleText(subject, detail, scale),
                  subject.sizes);
}

}  // namespace

std::vector<Detail> detailsOf(const Subject& subject) {
    std::vector<Detail> details;
    for (const auto& mark : subject.sections) {
        details.push_back(
            {Detail::Kind::section, "Section " + mark.letter + "–" + mark.letter, mark});
    }
    if (subject.hasEntries(layout::Wall::left) || subject.hasEntries(layout::Wall::right)) {
        details.push_back({Detail::Kind::endView, "End view from left", {}});
    }
    details.push_back({Detail::Kind::key, "Key", {}});
    return details;
}

std::optional<DetailPlan> planDetails(const Subject& subject,
                                      const std::vector<Detail>& details,
                                      Paper paper,
                                      double least,
                                      const Rect& room,
                                      const TextMetrics& metrics) {
    for (const auto& scale : scalesFor(paper)) {
        if (scale.ratio > 4.0 * least + 1e-9 || scale.ratio < least - 1e-9) {
            continue;
        }
        std::vector<Rect> sizes;
        for (const auto& detail : details) {
            sizes.push_back(fullSize(subject, detail, scale, metrics));
        }
        if (auto places = shelve(sizes, room)) {
            alignFeet(*places);
            Rect used = places->front();
            for (const auto& place : *places) {
                used = united(used, place);
            }
            return DetailPlan{scale, std::move(*places), used};
        }
    }
    return std::nullopt;
}

void drawDetails(Sketch& sketch,
                 const Subject& subject,
                 const std::vector<Detail>& details,
                 const DetailPlan& plan) {
    for (std::size_t i = 0; i < details.size(); ++i) {
        drawDetail(sketch, subject, details[i], plan.scale, plan.places[i]);
    }
}

}  // namespace gw::drawing

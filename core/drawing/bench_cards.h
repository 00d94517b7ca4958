#pragma once

#include <vector>

#include "checks/finding.h"
#include "drawing/sheet.h"
#include "geometry/built_layout.h"
#include "takeoff/cut_list.h"

/// Bench cards: each conductor straight, as it lies on the bench, with where it is stripped and
/// where each bend begins and ends, and a picture of it as bent.
namespace gw::drawing {

struct CardOptions {
    Paper paper = Paper::letter;
    takeoff::CutOptions cut = {};
};

/// Card after card in the order of the cut list, none parted between pages. Empty where the layout
/// has no conductor. The figures are those of takeoff/cut_list.h and takeoff/bend_marks.h.
std::vector<Drawing> benchCards(const geometry::BuiltLayout& built,
                                const std::vector<checks::Finding>& findings,
                                const CardOptions& options,
                                const TextMetrics& metrics);

/// Labels in a row: the places nearest to those wished for at which none overlaps another, within
/// [from, to], in order. Where they do not fit, evenly spaced. widths: as many as wishes, ascending
/// wishes.
std::vector<double> spread(const std::vector<double>& wishes,
                           const std::vector<double>& widths,
                           double from,
                           double to);

}  // namespace gw::drawing

#pragma once

#include <string>

#include "drawing/table.h"
#include "geometry/built_layout.h"

/// The tables of the layout sheet. What the layout does not state says "not stated".
namespace gw::drawing {

/// Tag, size, metal, insulation, from, to, length in the gutter.
Table conductorTable(const geometry::BuiltLayout& built);
/// Name, wall, raceway and size, centre on the wall, what it leads to.
Table entryTable(const geometry::BuiltLayout& built);
/// Name, part, phase, corner of the body nearest the datum, size.
Table blockTable(const geometry::BuiltLayout& built);
/// The gutter itself, where it hangs and what is connected.
Table gutterTable(const geometry::BuiltLayout& built);
/// Working de-energised, and what the sheet is not.
Table cautionTable();

/// The sentence every page carries.
std::string planningAidSentence();

}  // namespace gw::drawing

#pragma once

#include <QByteArray>
#include <vector>

#include "layout/layout.h"
#include "takeoff/table.h"

/// The takeoff as one page for a browser.
namespace gw::ui {

/// HTML in UTF-8, everything in the one file, wide tables on landscape paper with their heads on
/// each page. Also well-formed XML, so that other programs can read it. Same input, same bytes.
QByteArray takeoffToHtml(const std::vector<takeoff::Table>& tables, const layout::Layout& layout);

}  // namespace gw::ui

#pragma once

#include <string>
#include <vector>

#include "drawing/flow.h"
#include "drawing/sketch.h"

/// Tables that run on over columns and pages, their header repeated at each.
namespace gw::drawing {

struct TableColumn {
    std::string title;
    AnchorX align = AnchorX::left;
    /// 0 for a column as wide as its widest cell. Else, where not all can be: its part of what the
    /// others leave, its cells broken into lines.
    double share = 0.0;
};

struct TableRow {
    std::vector<std::string> cells;  ///< as many as columns
    bool strong = false;             ///< set in bold
};

struct Table {
    std::string title;
    std::string subtitle;  ///< beside the title, lighter
    std::vector<TableColumn> columns;
    std::vector<TableRow> rows;
    bool header = true;
    std::string whenEmpty;  ///< the sentence in place of no rows
};

/// Without the columns that have nothing in any row; a table without rows is left as it is.
Table withoutEmptyColumns(Table table);

/// Sets the table into the flow, from where it stands.
void setTable(Flow& flow, const Table& table, const TextSizes& sizes);

/// Height it would take in one piece of the given width.
double tableHeight(const Table& table,
                   double width,
                   const TextSizes& sizes,
                   const TextMetrics& metrics);

}  // namespace gw::drawing

#include "drawing/table.h"

#include <algorithm>
#include <memory>
#include <numeric>

#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kPad = 0.9;           // mm at each side of a cell
constexpr double kBesideTitle = 2.5;   // mm between title and subtitle
constexpr double kWorthParting = 0.7;  // of a table, which then begins where it stands
constexpr double kTogether = 75.0;     // mm: a table no higher is not parted while it can move on
constexpr double kRowAir = 0.5;        // mm above and below the lines of a row
constexpr std::size_t kMostLines =
    14;                              // in one cell: what is longer is cut, so that rows fit a page
constexpr double kMostFixed = 0.82;  // of the width for columns without a share
constexpr double kAfter = 4.0;       // mm below a table

Face faceOf(bool strong) {
    return strong ? Face::condensedBold : Face::condensed;
}

/// The lines of each cell of a row, and its height.
struct SetRow {
    std::vector<std::vector<std::string>> lines;
    double height = 0.0;
    bool strong = false;
};

class TableSetter {
public:
    TableSetter(const Table& table,
                double width,
                const TextSizes& sizes,
                const TextMetrics& metrics)
        : table_(table), width_(width), sizes_(sizes), metrics_(metrics) {
        widths_ = columnWidths();
    }

    double titleHeight(bool continued = false) const {
        if (table_.title.empty()) {
            return 0.0;
        }
        const auto below = continued ? 0.0 : static_cast<double>(subtitleBelow().size());
        return sizes_.heading * 1.25 + 1.2 + below * sizes_.line();
    }
    double headerHeight() const {
        return table_.header && !table_.rows.empty() ? header().height + 0.4 : 0.0;
    }
    SetRow set(const TableRow& row) const { return set(row.cells, row.strong); }
    SetRow whenEmpty() const {
        SetRow row;
        row.lines = {
            wrapped(table_.whenEmpty, width_ - 2 * kPad, sizes_.body, Face::condensed, metrics_)};
        row.height = heightOf(row.lines[0].size());
        return row;
    }

    void drawTitle(Sketch& sketch, Point corner, bool continued) const {
        if (table_.title.empty()) {
            return;
        }
        Text title;
        title.at = {corner.x, corner.y + sizes_.heading};
        title.text = table_.title + (continued ? " (continued)" : "");
        title.height = sizes_.heading;
        title.face = Face::bold;
        sketch.text(title);
        if (continued) {
            return;
        }
        Text sub;
        sub.height = sizes_.body;
        sub.face = Face::condensed;
        sub.at = {corner.x + titleWidth() + kBesideTitle, title.at.y};
        const auto below = subtitleBelow();
        if (below.empty() && !table_.subtitle.empty()) {
            sub.text = table_.subtitle;
            sketch.text(sub);
        }
        sub.at.x = corner.x;
        for (const auto& line : below) {
            sub.at.y += sizes_.line();
            sub.text = line;
            sketch.text(sub);
        }
    }

    void drawHeader(Sketch& sketch, Point corner) const {
        const auto row = header();
        sketch.rect(
            Stratum::frame, {corner.x, corner.y, width_, row.height}, std::nullopt, kPaleGrey);
        drawRow(sketch, corner, row, true);
        rule(sketch, corner, kObject);
    }

    void drawRow(Sketch& sketch, Point corner, const SetRow& row, bool isHeader = false) const {
        double left = corner.x;
        for (std::size_t i = 0; i < row.lines.size(); ++i) {
            const double width = isWhole(row) ? width_ : widths_[i];
            drawCell(sketch,
                     {left, corner.y, width, row.height},
                     row.lines[i],
                     isWhole(row) ? AnchorX::left : table_.columns[i].align,
                     row.strong);
            left += width;
        }
        rule(sketch, {corner.x, corner.y + row.height}, isHeader ? kObject : 0.1);
    }

private:
    double titleWidth() const { return metrics_.width(table_.title, sizes_.heading, Face::bold); }

    /// The subtitle's lines where it does not fit beside the title.
    std::vector<std::string> subtitleBelow() const {
        const double needed = titleWidth() + kBesideTitle +
                              metrics_.width(table_.subtitle, sizes_.body, Face::condensed);
        if (table_.subtitle.empty() || needed <= width_) {
            return {};
        }
        return wrapped(table_.subtitle, width_, sizes_.body, Face::condensed, metrics_);
    }

    /// One cell over all columns: the sentence in place of rows.
    bool isWhole(const SetRow& row) const { return row.lines.size() != widths_.size(); }

    SetRow header() const {
        std::vector<std::string> titles;
        for (const auto& column : table_.columns) {
            titles.push_back(column.title);
        }
        return set(titles, true);
    }

    SetRow set(const std::vector<std::string>& cells, bool strong) const {
        SetRow row{{}, 0.0, strong};
        std::size_t most = 1;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            row.lines.push_back(
                wrapped(cells[i], widths_[i] - 2 * kPad, sizes_.body, faceOf(strong), metrics_));
            if (row.lines.back().size() > kMostLines) {
                row.lines.back().resize(kMostLines);
                row.lines.back().back() = "…";
            }
            most = std::max(most, row.lines.back().size());
        }
        row.height = heightOf(most);
        return row;
    }

    double heightOf(std::size_t lines) const {
        return sizes_.body * 1.1 + sizes_.line() * static_cast<double>(lines - 1) + 2 * kRowAir;
    }

    void drawCell(Sketch& sketch,
                  const Rect& cell,
                  const std::vector<std::string>& lines,
                  AnchorX align,
                  bool strong) const {
        Text text;
        text.height = sizes_.body;
        text.face = faceOf(strong);
        text.anchorX = align;
        text.at.x = align == AnchorX::left     ? cell.x + kPad
                    : align == AnchorX::middle ? cell.x + 0.5 * cell.width
                                               : cell.right() - kPad;
        text.at.y = cell.y + kRowAir + 0.86 * sizes_.body;
        for (const auto& line : lines) {
            text.text = line;
            if (!line.empty()) {
                sketch.text(text);
            }
            text.at.y += sizes_.line();
        }
    }

    void rule(Sketch& sketch, Point from, double weight) const {
        sketch.line(Stratum::frame, from, {from.x + width_, from.y}, inkPen(weight));
    }

    double natural(std::size_t column) const {
        double widest =
            metrics_.width(table_.columns[column].title, sizes_.body, Face::condensedBold);
        for (const auto& row : table_.rows) {
            widest = std::max(widest,
                              metrics_.width(row.cells[column], sizes_.body, faceOf(row.strong)));
        }
        return widest + 2 * kPad;
    }

    /// As wide as their widest cells or wider where there is room. Else the
    /// columns with a share share what the others leave: none gets more than it needs.
    std::vector<double> columnWidths() const {
        std::vector<double> widths;
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            widths.push_back(natural(i));
        }
        const double all = std::accumulate(widths.begin(), widths.end(), 0.0);
        if (widths.empty() || all <= width_) {
            spread(widths, width_ - all);
            return widths;
        }
        shareOut(widths);
        return widths;
    }

    /// What is left goes to the columns with a share, or evenly to all.
    void spread(std::vector<double>& widths, double left) const {
        double shares = 0.0;
        for (const auto& column : table_.columns) {
            shares += column.share;
        }
        for (std::size_t i = 0; i < widths.size(); ++i) {
            widths[i] += shares > 0.0 ? left * table_.columns[i].share / shares
                                      : left / static_cast<double>(widths.size());
        }
    }

    bool isShared(std::size_t column) const { return table_.columns[column].share > 0.0; }

    void shareOut(std::vector<double>& widths) const {
        double fixed = 0.0;
        double shares = 0.0;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            (isShared(i) ? shares : fixed) += isShared(i) ? table_.columns[i].share : widths[i];
        }
        const double most = shares > 0.0 ? kMostFixed * width_ : width_;
        const double shrink = fixed > most ? most / fixed : 1.0;
        double rest = width_ - fixed * shrink;
        std::vector<bool> open;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            open.push_back(isShared(i));
            widths[i] *= isShared(i) ? 1.0 : shrink;
        }
        while (settleNarrowOne(widths, open, rest, shares)) {
        }
        for (std::size_t i = 0; i < widths.size(); ++i) {
            widths[i] = open[i] ? rest * table_.columns[i].share / shares : widths[i];
        }
    }

    /// Gives one column that needs less than its share what it needs; false when none does.
    bool settleNarrowOne(const std::vector<double>& needs,
                         std::vector<bool>& open,
                         double& rest,
                         double& shares) const {
        for (std::size_t i = 0; i < needs.size(); ++i) {
            if (open[i] && needs[i] < rest * table_.columns[i].share / shares - 1e-9) {
                open[i] = false;
                rest -= needs[i];
                shares -= table_.columns[i].share;
                return true;
            }
        }
        return false;
    }

    const Table& table_;
    double width_;
    const TextSizes& sizes_;
    const TextMetrics& metrics_;
    std::vector<double> widths_;
};

void startPiece(Flow& flow, const TableSetter& setter, bool continued) {
    auto at = [&] { return Point{flow.room().x, flow.room().y}; };
    setter.drawTitle(flow.sketch(), at(), continued);
    flow.use(setter.titleHeight(continued));
    if (setter.headerHeight() > 0.0) {
        setter.drawHeader(flow.sketch(), at());
        flow.use(setter.headerHeight());
    }
}

}  // namespace

Table withoutEmptyColumns(Table table) {
    for (std::size_t i = table.rows.empty() ? 0 : table.columns.size(); i-- > 0;) {
        const bool empty = std::all_of(table.rows.begin(),
                                       table.rows.end(),
                                       [&](const TableRow& row) { return row.cells[i].empty(); });
        if (empty && table.columns.size() > 1) {
            const auto at = static_cast<std::ptrdiff_t>(i);
            table.columns.erase(table.columns.begin() + at);
            for (auto& row : table.rows) {
                row.cells.erase(row.cells.begin() + at);
            }
        }
    }
    return table;
}

double tableHeight(const Table& table,
                   double width,
                   const TextSizes& sizes,
                   const TextMetrics& metrics) {
    const TableSetter setter(table, width, sizes, metrics);
    double height = setter.titleHeight() + setter.headerHeight();
    for (const auto& row : table.rows) {
        height += setter.set(row).height;
    }
    return height + (table.rows.empty() ? setter.whenEmpty().height : 0.0);
}

void setTable(Flow& flow, const Table& table, const TextSizes& sizes) {
    std::unique_ptr<TableSetter> setter;
    double width = -1.0;
    flow.begin();
    const auto refit = [&] {
        if (flow.room().width != width) {
            width = flow.room().width;
            setter = std::make_unique<TableSetter>(table, width, sizes, flow.sketch().metrics());
        }
    };
    refit();
    const double whole = tableHeight(table, width, sizes, flow.sketch().metrics());
    const double begun = setter->titleHeight() + setter->headerHeight() + 4 * sizes.line();
    const bool worthParting = flow.room().height >= kWorthParting * whole;
    const bool together = whole <= kTogether && !worthParting;
    const double atLeast = together ? whole : std::min(whole, begun);
    flow.ensure(0.0, atLeast);
    refit();
    startPiece(flow, *setter, false);
    if (table.rows.empty()) {
        const auto row = setter->whenEmpty();
        setter->drawRow(flow.sketch(), {flow.room().x, flow.room().y}, row);
        flow.use(row.height);
    }
    for (const auto& row : table.rows) {
        auto setRow = setter->set(row);
        if (setRow.height > flow.room().height && !flow.isAtTop()) {
            flow.next();
            refit();
            startPiece(flow, *setter, true);
            setRow = setter->set(row);
        }
        setter->drawRow(flow.sketch(), {flow.room().x, flow.room().y}, setRow);
        flow.use(setRow.height);
    }
    flow.use(kAfter);
}

}  // namespace gw::drawing

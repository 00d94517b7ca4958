#include "drawing/table.h"

#include <algorithm>
#include <memory>

#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kPad = 0.9;     // mm at each side of a cell
constexpr double kRowAir = 0.5;  // mm above and below the lines of a row
constexpr std::size_t kMostLines =
    14;                         // in one cell: what is longer is cut, so that rows fit a page
constexpr double kAfter = 4.0;  // mm below a table

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

    double titleHeight() const { return table_.title.empty() ? 0.0 : sizes_.heading * 1.25 + 1.2; }
    double headerHeight() const { return table_.header ? header().height + 0.4 : 0.0; }
    SetRow set(const TableRow& row) const { return set(row.cells, row.strong); }
    SetRow whenEmpty() const {
        SetRow row;
        row.lines = {
            wrapped(table_.whenEmpty, width_ - 2 * kPad, sizes_.body, Face::condensed, metrics_)};
        row.height = heightOf(row.lines[0].size());
        return row;
    }

    void drawTitle(Sketch& sketch, Point corner, bool continued) const {
        Text title;
        title.at = {corner.x, corner.y + sizes_.heading};
        title.text = table_.title + (continued ? " (continued)" : "");
        title.height = sizes_.heading;
        title.face = Face::bold;
        const double end = sketch.extentOf(title).right();
        sketch.text(title);
        if (!table_.subtitle.empty() && !continued) {
            Text beside;
            beside.height = sizes_.body;
            beside.face = Face::condensed;
            beside.at = {end + 2.5, title.at.y};
            beside.text = shortened(table_.subtitle,
                                    corner.x + width_ - beside.at.x,
                                    beside.height,
                                    beside.face,
                                    metrics_);
            sketch.text(beside);
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
            const double width = row.lines.size() == widths_.size() ? widths_[i] : width_;
            drawCell(sketch,
                     {left, corner.y, width, row.height},
                     row.lines[i],
                     table_.columns[i].align,
                     row.strong);
            left += width;
        }
        rule(sketch, {corner.x, corner.y + row.height}, isHeader ? kObject : 0.1);
    }

private:
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

    /// Columns without a share have what they need, if there is that much; the rest is shared.
    std::vector<double> columnWidths() const {
        std::vector<double> widths;
        double fixed = 0.0;
        double shares = 0.0;
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            widths.push_back(table_.columns[i].share > 0.0 ? 0.0 : natural(i));
            fixed += widths.back();
            shares += table_.columns[i].share;
        }
        const double most = shares > 0.0 ? 0.65 * width_ : width_;
        const double shrink = fixed > most ? most / fixed : 1.0;
        const double rest = width_ - fixed * shrink;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            widths[i] = table_.columns[i].share > 0.0 ? rest * table_.columns[i].share / shares
                                                      : widths[i] * shrink;
        }
        if (shares == 0.0 && !widths.empty()) {
            widths.back() += rest;
        }
        return widths;
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
    flow.use(setter.titleHeight());
    if (setter.headerHeight() > 0.0) {
        setter.drawHeader(flow.sketch(), at());
        flow.use(setter.headerHeight());
    }
}

}  // namespace

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
    const double atLeast = setter->titleHeight() + setter->headerHeight() + 4 * sizes.line();
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

#include "takeoff/table.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/contract.h"

namespace gw::takeoff {
namespace {

std::string shortest(double value) {
    std::array<char, 32> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value);
    CONTRACT(end.ec == std::errc());
    return {digits.data(), end.ptr};
}

std::string unitOf(const Column& column) {
    switch (column.kind) {
        case Kind::text:
        case Kind::count:
        case Kind::box:
            return "";
        case Kind::number:
            return column.unit;
        case Kind::length:
        case Kind::lengthUp:
            return "in";
        case Kind::money:
            return "$";
    }
    return "";
}

std::string headed(const Column& column) {
    const auto unit = unitOf(column);
    return unit.empty() ? column.name : column.name + " (" + unit + ")";
}

std::string quoted(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string all = "\"";
    for (const char letter : text) {
        all += letter == '"' ? "\"\"" : std::string(1, letter);
    }
    return all + '"';
}

std::string csvCell(const Cell& cell) {
    if (const auto* text = std::get_if<std::string>(&cell)) {
        return quoted(*text);
    }
    const auto* number = std::get_if<double>(&cell);
    return number != nullptr ? shortest(*number) : "";
}

std::string csvLine(const std::vector<std::string>& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        line += (i == 0 ? "" : ",") + cells[i];
    }
    return line + "\r\n";
}

/// Code points: texts here have no combining marks.
std::size_t widthOf(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
    }));
}

std::string padded(const std::string& text, std::size_t width, bool right) {
    const std::string blanks(width - std::min(width, widthOf(text)), ' ');
    return right ? blanks + text : text + blanks;
}

/// "30.00".
std::string cents(double dollars) {
    const auto whole = static_cast<long long>(std::llround(dollars * 100.0));
    const std::string part = std::to_string(whole % 100);
    return std::to_string(whole / 100) + (part.size() < 2 ? ".0" : ".") + part;
}

std::string textLine(const std::vector<std::string>& cells,
                     const std::vector<Column>& columns,
                     const std::vector<std::size_t>& widths) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        line +=
            (i == 0 ? "" : "  ") +
            padded(
                cells[i], widths[i], columns[i].kind != Kind::text && columns[i].kind != Kind::box);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    return line + '\n';
}

}  // namespace

std::vector<std::size_t> columnsShown(const Table& table) {
    std::vector<std::size_t> some;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const bool known = std::any_of(table.rows.begin(), table.rows.end(), [&](const auto& row) {
            const auto* text = std::get_if<std::string>(&row[i]);
            return text != nullptr ? !text->empty() : row[i].index() != 0;
        });
        if (known || table.columns[i].kind == Kind::box) {
            some.push_back(i);
        }
    }
    return some;
}

std::string headShown(const Column& column) {
    return column.kind == Kind::number ? headed(column) : column.name;
}

std::string shown(const Cell& cell, const Column& column, units::LengthUnit unit) {
    if (const auto* text = std::get_if<std::string>(&cell)) {
        return *text;
    }
    const auto* number = std::get_if<double>(&cell);
    if (number == nullptr) {
        return "";
    }
    switch (column.kind) {
        case Kind::text:
        case Kind::box:
        case Kind::count:
            return units::formatDecimal(*number, 0);
        case Kind::number:
            return units::formatDecimal(*number, 1);
        case Kind::length:
            return units::formatLength(units::Inches::of(*number), unit);
        case Kind::lengthUp:
            return units::formatLength(units::Inches::of(*number), unit, units::Rounding::up);
        case Kind::money:
            return cents(*number);
    }
    return "";
}

std::string toCsv(const Table& table) {
    std::vector<std::string> heads;
    for (const auto& column : table.columns) {
        heads.push_back(quoted(headed(column)));
    }
    std::string csv = csvLine(heads);
    for (const auto& row : table.rows) {
        CONTRACT(row.size() == table.columns.size());
        std::vector<std::string> cells;
        std::transform(row.begin(), row.end(), std::back_inserter(cells), csvCell);
        csv += csvLine(cells);
    }
    return csv;
}

JsonTree toJson(const Table& table) {
    auto columns = JsonTree::array();
    for (const auto& column : table.columns) {
        auto one = JsonTree::object();
        one.set("name", column.name);
        if (!unitOf(column).empty()) {
            one.set("unit", unitOf(column));
        }
        columns.push(std::move(one));
    }
    auto rows = JsonTree::array();
    for (const auto& row : table.rows) {
        auto members = JsonTree::object();
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (const auto* text = std::get_if<std::string>(&row[i])) {
                members.set(table.columns[i].name, *text);
            } else if (const auto* number = std::get_if<double>(&row[i])) {
                members.set(table.columns[i].name, *number);
            }
        }
        rows.push(std::move(members));
    }
    auto notes = JsonTree::array();
    for (const auto& note : table.notes) {
        notes.push(note);
    }
    auto all = JsonTree::object();
    all.set("name", table.name).set("title", table.title).set("basis", table.basis);
    all.set("columns", std::move(columns)).set("rows", std::move(rows));
    all.set("notes", std::move(notes));
    return all;
}

std::string toText(const Table& table, units::LengthUnit unit) {
    constexpr std::size_t kBox = 8;
    const auto some = columnsShown(table);
    std::vector<Column> columns;
    std::vector<std::size_t> widths;
    std::vector<std::vector<std::string>> lines(1);
    for (const auto i : some) {
        const auto& column = table.columns[i];
        columns.push_back(column);
        lines[0].push_back(headShown(column));
        widths.push_back(column.kind == Kind::box ? kBox : 0);
    }
    for (const auto& row : table.rows) {
        auto& line = lines.emplace_back();
        for (const auto i : some) {
            const bool box = table.columns[i].kind == Kind::box;
            line.push_back(box ? std::string(kBox, '_') : shown(row[i], table.columns[i], unit));
        }
    }
    for (const auto& line : lines) {
        for (std::size_t i = 0; i < line.size(); ++i) {
            widths[i] = std::max(widths[i], widthOf(line[i]));
        }
    }
    std::string text = table.title + '\n' + table.basis + "\n\n";
    for (const auto& line : lines) {
        text += textLine(line, columns, widths);
    }
    for (const auto& note : table.notes) {
        text += "- " + note + '\n';
    }
    return text;
}

}  // namespace gw::takeoff

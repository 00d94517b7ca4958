#include "reference/tsv.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <stdexcept>

namespace gw::test {
namespace {

std::vector<std::string> split(const std::string& line) {
    std::vector<std::string> cells;
    std::size_t from = 0;
    for (std::size_t tab = line.find('\t'); tab != std::string::npos; tab = line.find('\t', from)) {
        cells.push_back(line.substr(from, tab - from));
        from = tab + 1;
    }
    cells.push_back(line.substr(from));
    return cells;
}

TsvRow rowOf(const std::vector<std::string>& columns, const std::vector<std::string>& cells) {
    if (cells.size() != columns.size()) {
        throw std::runtime_error("a row has another number of cells than there are columns");
    }
    TsvRow row;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        row[columns[i]] = cells[i];
    }
    return row;
}

}  // namespace

Tsv readTsv(const std::string& file) {
    std::ifstream in(std::string(GW_SOURCE_DIR) + "/tests/reference/tables/" + file + ".tsv");
    if (!in) {
        throw std::runtime_error("no table " + file);
    }
    Tsv table;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        if (table.columns.empty()) {
            table.columns = split(line);
        } else {
            table.rows.push_back(rowOf(table.columns, split(line)));
        }
    }
    if (table.rows.empty() || table.columns.back() != "basis") {
        throw std::runtime_error("table " + file + " has no rows or no basis");
    }
    return table;
}

double number(const TsvRow& row, const std::string& column) {
    const std::string& cell = row.at(column);
    char* end = nullptr;
    const double value = std::strtod(cell.c_str(), &end);
    if (cell.empty() || *end != '\0') {
        throw std::runtime_error("column " + column + " holds no number: " + cell);
    }
    return value;
}

bool isBlank(const TsvRow& row, const std::string& column) {
    return row.at(column) == "-";
}

}  // namespace gw::test

#pragma once

#include <map>
#include <string>
#include <vector>

/// Reads the published tables of tests/reference/tables: tab-separated, `#` lines are comments,
/// then a line of column names, then the rows. Fails the test on a file that is not so.
namespace gw::test {

using TsvRow = std::map<std::string, std::string>;

struct Tsv {
    std::vector<std::string> columns;
    std::vector<TsvRow> rows;
};

/// file: "ampacity_30C", without path and ending.
Tsv readTsv(const std::string& file);

/// A cell as a number; the test stops with a message if it is none.
double number(const TsvRow& row, const std::string& column);

/// Whether the cell is "-": the table prints no value.
bool isBlank(const TsvRow& row, const std::string& column);

}  // namespace gw::test

#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include "base/json_writer.h"
#include "units/length.h"

/// What leaves the program as rows and columns, before anyone has decided on what it is printed.
namespace gw::takeoff {

/// What a column's numbers are. Lengths are inches in the table, whatever they are shown in.
enum class Kind {
    text,
    count,     ///< whole numbers
    number,    ///< in the column's unit
    length,    ///< shown to the nearest 1/16 in or 0.1 mm
    lengthUp,  ///< the same, never shown shorter than it is
    money,     ///< dollars
    box,       ///< to be filled in by hand: always empty
};

struct Column {
    std::string name;  ///< unique in the table: "Cut", "From"
    Kind kind = Kind::text;
    std::string unit = {};  ///< of `number`: "lb", "lbf-in", "deg"
};

/// Empty: not known. Texts in text columns, else numbers.
using Cell = std::variant<std::monostate, std::string, double>;

struct Table {
    std::string name;   ///< for commands and files: "cut-list"
    std::string title;  ///< "Cut list"
    std::string basis;  ///< how its figures come about, in one or two sentences
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows;  ///< each as long as `columns`
    std::vector<std::string> notes = {};  ///< what is missing, and cautions
};

/// RFC 4180: a header line, CRLF, quoted where it must be; lengths in inches and numbers in the
/// shortest form that reads back to the same double. Basis and notes are not in it.
std::string toCsv(const Table& table);

/// Name, title, basis, columns with their units, rows with members by column, notes. What is not
/// known is not there.
JsonTree toJson(const Table& table);

/// For reading: columns side by side, lengths in the unit asked; columns in which nothing is known
/// are left out, but for those to be filled in.
std::string toText(const Table& table, units::LengthUnit unit);

/// Columns worth showing, by index: those in which something is known, and those to be filled in.
std::vector<std::size_t> columnsShown(const Table& table);

/// A column's head for reading: numbers with their unit, lengths without: their cells have it.
std::string headShown(const Column& column);

/// One cell as toText() shows it; empty where it is not known.
std::string shown(const Cell& cell, const Column& column, units::LengthUnit unit);

}  // namespace gw::takeoff

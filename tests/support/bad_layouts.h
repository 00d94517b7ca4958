#pragma once

#include <functional>
#include <string>
#include <vector>

#include "base/result.h"

/// Layout files that are wrong in one way each, made from tests/data/layouts/small.json, which is
/// right. What is expected of them follows from the published schema, from RFC 8259 (JSON),
/// RFC 6901 (the place as a pointer) and from the header of layout::validate. A syntax error's
/// place is the first character that cannot stand where it does; of a misspelt word or number, the
/// first one that spoils it.
namespace gw::test {

struct BadLayout {
    const char* name;
    std::function<std::string(const std::string&)> spoil;  ///< the good file to the bad one
    ErrorCode code;
    std::string place;  ///< JSON pointer, line and column, or empty: the whole file
    std::string says;   ///< what the line has to contain: expected and found, mostly
};

const std::vector<BadLayout>& badLayouts();

/// The bytes of a row's file.
std::string bytesOf(const BadLayout& row);
/// The good file they are made from.
const std::string& goodLayout();

}  // namespace gw::test

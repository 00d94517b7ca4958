#pragma once

#include "standards/citation.h"

/// What all the printed tables share. The rows are the cells as printed; what the program makes of
/// them is beside the look-ups. tests/reference/tables holds the same cells with their sources, and
/// a test compares the two both ways.
namespace gw::standards::rows {

inline constexpr double kBlank = -1.0;         ///< the table has no value there
inline constexpr double kNotSpecified = -2.0;  ///< the table says that it specifies none

}  // namespace gw::standards::rows

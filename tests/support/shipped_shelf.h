#pragma once

#include "parts/part.h"

namespace gw::test {

/// The parts that come with the program, read from resources/parts of the source tree.
parts::Shelf shippedShelf();

}  // namespace gw::test

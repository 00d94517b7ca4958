#pragma once

namespace gw::app {

/// The toolkit's remarks about its surroundings are not ours to print; its errors are.
void printOnlyErrors();

}  // namespace gw::app

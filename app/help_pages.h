#pragma once

#include "checks/help.h"

namespace gw::app {

/// The help page of a check that comes with the program (compiled in).
checks::HelpPage helpPage(checks::Check check);

}  // namespace gw::app

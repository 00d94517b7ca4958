#pragma once

namespace gw::app {

/// Whether these arguments ask for the window: none at all, or one that is a layout's path rather
/// than a verb or an option.
bool wantsWindow(int argc, char** argv);

/// Opens the window, with the layout if one is named. Exit status as runCommandLine: 2 where there
/// is no screen or the layout cannot be read, with one line on stderr.
int runWindow(int argc, char** argv);

}  // namespace gw::app

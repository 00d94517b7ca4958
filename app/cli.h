#pragma once

namespace gw::app {

/// The program without a window. Exit status: 0 done, no breach; 1 done, breaches found; 2 the
/// input could not be used (one line on stderr says why); 3 a fault of the program's own.
int runCommandLine(int argc, char** argv);

}  // namespace gw::app

#include "app/cli.h"
#include "app/window.h"

int main(int argc, char** argv) {
    return gw::app::wantsWindow(argc, argv) ? gw::app::runWindow(argc, argv)
                                            : gw::app::runCommandLine(argc, argv);
}

#include "app/cli.h"

int main(int argc, char** argv) {
    return gw::app::runCommandLine(argc, argv);
}

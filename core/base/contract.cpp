#include "base/contract.h"

#include <cstdio>
#include <cstdlib>

namespace gw {

void contractBroken(const char* condition, const char* file, int line) {
    std::fprintf(
        stderr, "gutterwright: a fault of the program: %s (%s:%d)\n", condition, file, line);
    std::fflush(stderr);
    std::_Exit(3);
}

}  // namespace gw

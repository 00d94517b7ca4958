#pragma once

/// CONTRACT(condition): a promise between parts of the program, checked in every build.
/// A broken one is a bug: the message goes to stderr and the program stops (exit status 3 from the
/// command line). Never use it on what a person typed or a file says: that is a Result.
namespace gw {
[[noreturn]] void contractBroken(const char* condition, const char* file, int line);
}

#define CONTRACT(condition)                                       \
    do {                                                          \
        if (!(condition)) {                                       \
            ::gw::contractBroken(#condition, __FILE__, __LINE__); \
        }                                                         \
    } while (false)

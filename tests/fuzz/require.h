#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>

/// What has to hold whatever the bytes: a broken one stops the fuzzer, which keeps the input.
namespace gw::fuzz {

inline void require(bool holds, const std::string& property) {
    if (!holds) {
        std::fprintf(stderr, "PROPERTY BROKEN: %s\n", property.c_str());
        std::abort();
    }
}

}  // namespace gw::fuzz

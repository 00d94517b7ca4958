#include "drawing/scale.h"

#include <array>

namespace gw::drawing {
namespace {

// clang-format off
constexpr std::array<Scale, 13> kInch = {{
    {"full size",          1.0},
    {"6\" = 1'-0\"",       1.0 / 2},
    {"3\" = 1'-0\"",       1.0 / 4},
    {"1-1/2\" = 1'-0\"",   1.0 / 8},
    {"1\" = 1'-0\"",       1.0 / 12},
    {"3/4\" = 1'-0\"",     1.0 / 16},
    {"1/2\" = 1'-0\"",     1.0 / 24},
    {"3/8\" = 1'-0\"",     1.0 / 32},
    {"1/4\" = 1'-0\"",     1.0 / 48},
    {"3/16\" = 1'-0\"",    1.0 / 64},
    {"1/8\" = 1'-0\"",     1.0 / 96},
    {"1/16\" = 1'-0\"",    1.0 / 192},
    {"1/32\" = 1'-0\"",    1.0 / 384},
}};
constexpr std::array<Scale, 9> kMetric = {{
    {"1:1",   1.0},
    {"1:2",   1.0 / 2},
    {"1:5",   1.0 / 5},
    {"1:10",  1.0 / 10},
    {"1:20",  1.0 / 20},
    {"1:50",  1.0 / 50},
    {"1:100", 1.0 / 100},
    {"1:200", 1.0 / 200},
    {"1:500", 1.0 / 500},
}};
// clang-format on

}  // namespace

std::span<const Scale> scalesFor(Paper paper) {
    switch (paper) {
        case Paper::letter:
        case Paper::legal:
        case Paper::tabloid:
        case Paper::archC:
        case Paper::archD:
            return kInch;
        case Paper::a4:
        case Paper::a3:
        case Paper::a2:
        case Paper::a1:
            return kMetric;
    }
    return kInch;
}

}  // namespace gw::drawing

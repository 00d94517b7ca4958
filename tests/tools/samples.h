#pragma once

#include <string>
#include <vector>

#include "layout/layout.h"

/// The sample layouts of the riverside yard, and for every check a broken twin.
namespace gw::tools {

struct Sample {
    std::string name;
    layout::Layout layout;
};

std::vector<Sample> allSamples(const parts::Shelf& shelf);

layout::Layout fiveTenants(const parts::Shelf& shelf);

}  // namespace gw::tools

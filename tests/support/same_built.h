#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"
#include "geometry/built_layout.h"

/// Whether what was kept current is what a fresh look gives, to the last bit.
namespace gw::test_support {

/// Where two built layouts first differ: "path of conductor 3". Empty: nowhere.
std::string firstDifference(const geometry::BuiltLayout& kept, const geometry::BuiltLayout& fresh);

/// Which finding first differs, and in what. Empty: none.
std::string firstDifference(const std::vector<checks::Finding>& kept,
                            const std::vector<checks::Finding>& fresh);

}  // namespace gw::test_support

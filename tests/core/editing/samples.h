#pragma once

#include <string>
#include <vector>

#include "geometry/built_layout.h"

/// The shipped samples, as edits start from them.
namespace gw::editing::test {

/// Folders of samples/ without the broken ones, in order.
std::vector<std::string> goodSamples();
layout::Layout sampleLayout(const std::string& name, const parts::Shelf& shelf);

/// The bytes of the layout file: two layouts are the same when these are.
std::string bytesOf(const layout::Layout& layout);

/// Greatest distance between corners, tips and blocks of two layouts with the same items; 1e9 where
/// they differ in anything else.
double apart(const layout::Layout& a, const layout::Layout& b);

}  // namespace gw::editing::test

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "fuzz/finite.h"
#include "fuzz/refusal.h"
#include "fuzz/require.h"
#include "geometry/built_layout.h"
#include "parts/part_file.h"
#include "parts/shelf.h"

/// Any bytes: refused with one clear line, or parts that are written and read back to the same
/// bytes, that make a shelf, and that can be placed in a gutter in every attitude.
namespace gw::fuzz {
namespace {

void requireRoundTrip(const std::vector<parts::Part>& read) {
    const auto once = parts::writeParts(read);
    const auto again = parts::readParts(once, "again.json");
    require(again.has_value(), "what was written is read");
    require(parts::writeParts(*again) == once, "writing, reading and writing gives the bytes");
}

layout::Layout oneOfEach(const parts::Shelf& shelf) {
    layout::Layout layout;
    layout.gutter.inside = {48, 12, 12};
    const auto& attitudes = parts::Attitude::all();
    for (const auto& item : shelf) {
        const auto number = layout.blocks.size();
        layout::Block block;
        block.id = layout::BlockId("B" + std::to_string(number));
        block.part = item.first;
        block.attitude = attitudes.at(number % attitudes.size());
        layout.blocks.push_back(block);
    }
    return layout;
}

void tryBytes(std::string_view bytes) {
    const auto read = parts::readParts(bytes, "fuzz.json");
    if (!read) {
        requireOneClearLine(read.error(), "fuzz.json");
        return;
    }
    requireRoundTrip(*read);
    const auto shelf = parts::loadShelf({{"fuzz.json", std::string(bytes)}});
    require(shelf.has_value(), "parts of one file make a shelf");
    const auto layout = oneOfEach(*shelf);
    require(layout::validate(layout, *shelf).has_value(), "parts can be placed");
    requireFinite(geometry::build(layout, *shelf));
}

}  // namespace
}  // namespace gw::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    gw::fuzz::tryBytes({reinterpret_cast<const char*>(data), size});
    return 0;
}

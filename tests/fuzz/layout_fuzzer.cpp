#include <cstddef>
#include <cstdint>
#include <string_view>

#include "checks/report.h"
#include "files/layout_file.h"
#include "fuzz/finite.h"
#include "fuzz/refusal.h"
#include "fuzz/require.h"
#include "geometry/built_layout.h"
#include "support/shipped_shelf.h"

/// Any bytes: refused with one clear line, or a layout that is valid, is written and read back to
/// the same bytes, and that geometry, checks and report take without a crash or a NaN.
namespace gw::fuzz {
namespace {

const parts::Shelf& shelf() {
    static const parts::Shelf kShelf = test::shippedShelf();
    return kShelf;
}

void requireRoundTrip(const layout::Layout& layout) {
    const auto once = files::writeLayout(layout);
    const auto again = files::readLayout(once, "again.json", shelf());
    require(again.has_value(), "what was written is read");
    require(files::writeLayout(*again) == once, "writing, reading and writing gives the bytes");
}

void requireSoundWhenBuilt(const layout::Layout& layout) {
    const auto built = geometry::build(layout, shelf());
    requireFinite(built);
    const auto findings = checks::checkAll(built);
    for (const auto& finding : findings) {
        requireFinite(finding);
    }
    require(!checks::textReport(built, findings, {"fuzz.json"}).empty(), "a report has text");
}

void tryBytes(std::string_view bytes) {
    const auto layout = files::readLayout(bytes, "fuzz.json", shelf());
    if (!layout) {
        requireOneClearLine(layout.error(), "fuzz.json");
        return;
    }
    require(layout::validate(*layout, shelf()).has_value(), "what is read is valid");
    requireRoundTrip(*layout);
    requireSoundWhenBuilt(*layout);
}

}  // namespace
}  // namespace gw::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    gw::fuzz::tryBytes({reinterpret_cast<const char*>(data), size});
    return 0;
}

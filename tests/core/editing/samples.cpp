#include "core/editing/samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "base/read_file.h"
#include "files/layout_file.h"

namespace gw::editing::test {
namespace {

namespace fs = std::filesystem;

constexpr double kOther = 1e9;

double endsApart(const layout::End& a, const layout::End& b) {
    if (a.index() != b.index()) {
        return kOther;
    }
    const auto* one = std::get_if<layout::Spare>(&a);
    return one == nullptr ? 0.0 : distance(one->tip, std::get<layout::Spare>(b).tip);
}

double pathsApart(const layout::Conductor& a, const layout::Conductor& b) {
    if (a.id != b.id || a.corners.size() != b.corners.size()) {
        return kOther;
    }
    double worst = std::max(endsApart(a.from, b.from), endsApart(a.to, b.to));
    for (std::size_t i = 0; i < a.corners.size(); ++i) {
        worst = std::max({worst,
                          distance(a.corners[i].at, b.corners[i].at),
                          std::abs((a.corners[i].radius - b.corners[i].radius).in())});
    }
    return worst;
}

}  // namespace

std::vector<std::string> goodSamples() {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        const std::string name = entry.path().filename().string();
        if (entry.is_directory() && name.rfind("broken-", 0) != 0) {
            names.push_back(name);
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

layout::Layout sampleLayout(const std::string& name, const parts::Shelf& shelf) {
    const auto file = (fs::path(GW_SOURCE_DIR) / "samples" / name / "layout.json").string();
    const auto layout = files::readLayout(readFile(file).value(), file, shelf);
    EXPECT_TRUE(layout) << toLine(layout.error());
    return *layout;
}

std::string bytesOf(const layout::Layout& layout) {
    return files::writeLayout(layout);
}

double apart(const layout::Layout& a, const layout::Layout& b) {
    if (a.conductors.size() != b.conductors.size() || a.blocks.size() != b.blocks.size() ||
        a.entries.size() != b.entries.size()) {
        return kOther;
    }
    double worst = 0.0;
    for (std::size_t i = 0; i < a.conductors.size(); ++i) {
        worst = std::max(worst, pathsApart(a.conductors[i], b.conductors[i]));
    }
    for (std::size_t i = 0; i < a.blocks.size(); ++i) {
        worst = std::max(worst, distance(a.blocks[i].corner, b.blocks[i].corner));
        worst = std::max(worst, a.blocks[i].attitude == b.blocks[i].attitude ? 0.0 : kOther);
    }
    for (std::size_t i = 0; i < a.entries.size(); ++i) {
        const bool sameWall = a.entries[i].wall == b.entries[i].wall;
        worst = std::max({worst,
                          sameWall ? 0.0 : kOther,
                          std::abs(a.entries[i].u - b.entries[i].u),
                          std::abs(a.entries[i].v - b.entries[i].v)});
    }
    return worst;
}

}  // namespace gw::editing::test

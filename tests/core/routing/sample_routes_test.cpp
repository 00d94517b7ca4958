#include <gtest/gtest.h>

#include <filesystem>

#include "base/read_file.h"
#include "files/layout_file.h"
#include "routing/routing.h"
#include "support/shipped_shelf.h"

/// Sample layouts stripped of their paths are routed, and the checks of space and of bends find
/// nothing against what comes of it.
namespace gw::routing {
namespace {

struct Row {
    const char* name;
    double most;  ///< length over the sample's own, which was laid by hand or by plain templates
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

std::string caseName(const testing::TestParamInfo<Row>& info) {
    std::string name = info.param.name;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
}

// clang-format off
constexpr Row kRows[] = {
    {"rope-walk",     1.0001},
    {"gate-house",    1.00},
    {"boat-hall",     1.00},
    {"slipway-pumps", 1.00},
    {"five-tenants",  1.00},
    {"shallow-loft",  1.05},
    // Its paths are what is broken.
    {"broken-clearance",   1.05},
    {"broken-bend-radius", 1.05},
};
// clang-format on

layout::Layout sampleOf(const std::string& name, const parts::Shelf& shelf) {
    const auto path = std::filesystem::path(GW_SOURCE_DIR) / "samples" / name / "layout.json";
    const std::string file = path.string();
    return files::readLayout(readFile(file).value(), file, shelf).value();
}

double lengthOf(const layout::Layout& layout, const parts::Shelf& shelf) {
    double length = 0.0;
    for (const auto& conductor : geometry::build(layout, shelf).conductors) {
        length += conductor.built.path.length().in();
    }
    return length;
}

class SampleRoutes : public testing::TestWithParam<Row> {};

TEST_P(SampleRoutes, StrippedOfItsPathsEveryConductorFindsOne) {
    const auto shelf = test::shippedShelf();
    const auto sample = sampleOf(GetParam().name, shelf);
    auto stripped = sample;
    for (auto& conductor : stripped.conductors) {
        conductor.corners.clear();
    }
    const auto routing = route(stripped, shelf).value();
    for (const auto& unresolved : routing.unresolved) {
        ADD_FAILURE() << unresolved.conductor.text() << ": " << unresolved.sentence;
    }
    ASSERT_TRUE(routing.answer);
    for (const auto& finding : checks::checkAll(geometry::build(*routing.answer, shelf))) {
        const bool judged = checks::groupOf(finding.check) == checks::Group::space ||
                            finding.check == checks::Check::bendRadius;
        EXPECT_FALSE(judged && finding.verdict == checks::Verdict::breach) << finding.working;
    }
    EXPECT_LE(lengthOf(*routing.answer, shelf), GetParam().most * lengthOf(sample, shelf));
    for (const auto& routed : routing.routed) {
        EXPECT_GE(routed.length, routed.straightLine - 1e-6) << routed.conductor.text();
    }
}

INSTANTIATE_TEST_SUITE_P(Sample, SampleRoutes, testing::ValuesIn(kRows), caseName);

}  // namespace
}  // namespace gw::routing

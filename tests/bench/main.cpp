#include "bench/report.h"

namespace gw::bench {

/// What is held against what. A benchmark of a later stage (building a layout, all checks) gets its
/// own file beside this one and a row here.
const std::vector<Comparison>& comparisons() {
    static const std::vector<Comparison> kComparisons = {
        {"nearPairs",
         {"nearPairs_fcl_overlaps",
          "nearPairs_fcl_collisions",
          "nearPairs_fcl_distances",
          "nearPairs_fcl_with_tree"},
         30.0,
         1.15},
        {"fill", {"fill_sampled"}, 50.0, 1.15},
    };
    return kComparisons;
}

}  // namespace gw::bench

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) {
        return 2;
    }
    gw::bench::Report report;
    benchmark::RunSpecifiedBenchmarks(&report);
    report.printTable();
    benchmark::Shutdown();
    return 0;
}

#include "bench/report.h"

namespace gw::bench {

/// What is held against what. The aims are the project's own.
const std::vector<Comparison>& comparisons() {
    static const std::vector<Comparison> kComparisons = {
        {"nearPairs",
         {{"nearPairs_fcl_gaps", 30.0},
          {"nearPairs_fcl_collide", 30.0},
          {"nearPairs_fcl_distance", 0.0},
          {"nearPairs_fcl_gaps_standing", 0.0}},
         1.15},
        {"clearance", {{"clearance_fcl_gaps", 30.0}, {"clearance_fcl_collide", 30.0}}, 1.15},
        {"clearance_findings", {}, 1.15},
        {"fill", {{"fill_sampled", 50.0}}, 1.15},
        {"build", {}, 1.15},
        {"checkAll", {}, 1.15},
        {"build_checkAll", {}, 1.15},
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

#include <array>
#include <string>
#include <vector>

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
        // From 50 to 800 at most twice the time: 16^0.25.
        {"live_conductor",
         {{"live_fcl_full", 1500.0}, {"live_fcl_incremental", 20.0}, {"live_full", 0.0}},
         0.25},
        {"live_block", {}, 0.25},
        {"fill", {{"fill_sampled", 50.0}}, 1.15},
        {"build", {}, 1.15},
        {"checkAll", {}, 1.15},
        {"build_checkAll", {}, 1.15},
    };
    return kComparisons;
}

}  // namespace gw::bench

int main(int argc, char** argv) {
    // Peers take turns, many short ones: a machine that is slow for a while is slow for all. What
    // the caller says comes later and so counts.
    std::array<std::string, 3> defaults = {"--benchmark_enable_random_interleaving=true",
                                           "--benchmark_repetitions=12",
                                           "--benchmark_min_time=0.06"};
    std::vector<char*> arguments = {argv[0]};
    for (std::string& one : defaults) {
        arguments.push_back(one.data());
    }
    arguments.insert(arguments.end(), argv + 1, argv + argc);
    int count = static_cast<int>(arguments.size());
    benchmark::Initialize(&count, arguments.data());
    if (benchmark::ReportUnrecognizedArguments(count, arguments.data())) {
        return 2;
    }
    gw::bench::Report report;
    benchmark::RunSpecifiedBenchmarks(&report);
    report.printTable();
    benchmark::Shutdown();
    return 0;
}

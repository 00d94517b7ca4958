#pragma once

#include <benchmark/benchmark.h>

#include <map>
#include <string>
#include <utility>
#include <vector>

/// Console output as usual, and at the end one table: time by count, ratio to a peer in the same
/// run, growth exponent.
namespace gw::bench {

class Report : public benchmark::ConsoleReporter {
public:
    void ReportRuns(const std::vector<Run>& runs) override;

    /// Ratios and exponents of all runs so far that belong to a comparison, to standard output.
    void printTable() const;

private:
    /// Benchmark name without its argument -> argument -> least seconds of all repetitions.
    std::map<std::string, std::map<long, double>> seconds_;
};

/// What ours is held against.
struct Peer {
    std::string name;
    double leastRatio = 0.0;  ///< aimed at for every count; 0: told for information
};

/// One row group of the table. Benchmarks are named "NAME/COUNT".
struct Comparison {
    std::string ours;
    std::vector<Peer> peers;    ///< may be empty: growth only
    double mostExponent = 0.0;  ///< aimed at, from 50 to 800
};
const std::vector<Comparison>& comparisons();

}  // namespace gw::bench

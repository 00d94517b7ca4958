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

/// One row group of the table. Benchmarks are named "NAME/COUNT".
struct Comparison {
    std::string ours;
    std::vector<std::string> peers;  ///< may be empty: growth only
    double leastRatio = 0.0;         ///< aimed at; 0: none
    double mostExponent = 0.0;       ///< aimed at, from 50 to 800; 0: none
};
const std::vector<Comparison>& comparisons();

}  // namespace gw::bench

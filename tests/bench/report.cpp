#include "bench/report.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace gw::bench {

void Report::ReportRuns(const std::vector<Run>& runs) {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
        const std::string name = run.run_name.function_name;
        if (run.error_occurred || run.run_type != Run::RT_Iteration || run.run_name.args.empty()) {
            continue;
        }
        const long count = std::stol(run.run_name.args);
        const double seconds = run.real_accumulated_time / static_cast<double>(run.iterations);
        const auto [entry, isNew] = seconds_[name].try_emplace(count, seconds);
        entry->second = isNew ? seconds : std::min(entry->second, seconds);
    }
}

namespace {

using Times = std::map<long, double>;

/// Slope of log time over log count between two counts.
double exponent(const Times& times, long from, long to) {
    return std::log(times.at(to) / times.at(from)) /
           std::log(static_cast<double>(to) / static_cast<double>(from));
}

void printTimes(const std::string& name, const Times& times, const Times* base) {
    std::printf("%-26s", name.c_str());
    for (const auto& [count, seconds] : times) {
        if (base != nullptr && base->count(count) == 1) {
            std::printf(
                "  %5ld: %10.1f us  (x %6.1f)", count, seconds * 1e6, seconds / base->at(count));
        } else {
            std::printf("  %5ld: %10.1f us            ", count, seconds * 1e6);
        }
    }
    if (times.count(50) == 1 && times.count(800) == 1) {
        std::printf("  grows as n^%.2f", exponent(times, 50, 800));
    }
    std::printf("\n");
}

}  // namespace

void Report::printTable() const {
    std::printf("\nLeast time of the repetitions; x: times as long as the first line's.\n");
    for (const Comparison& comparison : comparisons()) {
        const auto ours = seconds_.find(comparison.ours);
        if (ours == seconds_.end()) {
            continue;
        }
        std::printf("\n");
        printTimes(comparison.ours, ours->second, nullptr);
        for (const std::string& peer : comparison.peers) {
            if (const auto theirs = seconds_.find(peer); theirs != seconds_.end()) {
                printTimes(peer, theirs->second, &ours->second);
            }
        }
        if (comparison.leastRatio > 0.0) {
            std::printf("%-26s  at least x %.0f, at most n^%.2f\n",
                        "aim",
                        comparison.leastRatio,
                        comparison.mostExponent);
        }
    }
}

}  // namespace gw::bench

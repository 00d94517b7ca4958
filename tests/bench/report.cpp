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
        const double seconds = run.cpu_accumulated_time / static_cast<double>(run.iterations);
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

const char* word(bool met) {
    return met ? "met" : "MISSED";
}

void printTimes(const std::string& name, const Times& times) {
    std::printf("%-28s", name.c_str());
    for (const auto& [count, seconds] : times) {
        std::printf("%12.1f us", seconds * 1e6);
    }
    if (times.count(50) == 1 && times.count(800) == 1) {
        std::printf("   n^%.2f", exponent(times, 50, 800));
    }
    std::printf("\n");
}

void printRatios(const Peer& peer, const Times& theirs, const Times& ours) {
    std::printf("%-28s", "  x ours");
    bool met = true;
    for (const auto& [count, seconds] : theirs) {
        const double ratio = ours.count(count) == 1 ? seconds / ours.at(count) : 0.0;
        std::printf("%12.1f   ", ratio);
        met = met && ratio >= peer.leastRatio;
    }
    if (peer.leastRatio > 0.0) {
        std::printf("   aim: at least x %.0f, %s", peer.leastRatio, word(met));
    }
    std::printf("\n");
}

void printGrowth(const Comparison& comparison, const Times& ours) {
    if (ours.count(50) == 1 && ours.count(800) == 1) {
        const double grows = exponent(ours, 50, 800);
        std::printf("  growth from 50 to 800: n^%.2f, aim: at most n^%.2f, %s\n",
                    grows,
                    comparison.mostExponent,
                    word(grows <= comparison.mostExponent));
    }
}

}  // namespace

void Report::printTable() const {
    std::printf("\nProcessor time, least of the repetitions, for 12, 50, 200, 800 conductors.\n");
    for (const Comparison& comparison : comparisons()) {
        const auto ours = seconds_.find(comparison.ours);
        if (ours == seconds_.end()) {
            continue;
        }
        std::printf("\n");
        printTimes(comparison.ours, ours->second);
        printGrowth(comparison, ours->second);
        for (const Peer& peer : comparison.peers) {
            if (const auto theirs = seconds_.find(peer.name); theirs != seconds_.end()) {
                printTimes(peer.name, theirs->second);
                printRatios(peer, theirs->second, ours->second);
            }
        }
    }
}

}  // namespace gw::bench

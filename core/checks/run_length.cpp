#include "checks/run_length.h"

#include <algorithm>

#include "checks/support.h"

namespace gw::checks {
namespace {

PhaseRuns runsOf(const geometry::BuiltLayout& built,
                 std::size_t circuit,
                 const std::vector<std::size_t>& members,
                 layout::Phase phase) {
    PhaseRuns runs{circuit, phase, {}};
    runs.sets.resize(static_cast<std::size_t>(built.layout.circuits[circuit].sets));
    for (const std::size_t i : members) {
        const auto& conductor = built.layout.conductors[i];
        if (conductor.phase == phase) {
            runs.sets[static_cast<std::size_t>(conductor.set - 1)].push_back(i);
        }
    }
    return runs;
}

}  // namespace

std::vector<std::size_t> PhaseRuns::all() const {
    std::vector<std::size_t> conductors;
    for (const auto& pieces : sets) {
        conductors.insert(conductors.end(), pieces.begin(), pieces.end());
    }
    return conductors;
}

std::vector<PhaseRuns> phaseRuns(const geometry::BuiltLayout& built,
                                 std::size_t circuit,
                                 const std::vector<std::size_t>& members) {
    std::vector<PhaseRuns> all;
    for (const layout::Phase phase : built.layout.circuits[circuit].phases) {
        PhaseRuns runs = runsOf(built, circuit, members, phase);
        if (!runs.all().empty()) {
            all.push_back(std::move(runs));
        }
    }
    return all;
}

std::vector<std::size_t> entriesOf(const geometry::BuiltConductor& conductor) {
    std::vector<std::size_t> entries;
    for (const auto* end : {&conductor.from, &conductor.to}) {
        if (end->kind == geometry::BuiltEnd::Kind::entry) {
            entries.push_back(given(end->entry));
        }
    }
    return entries;
}

RunLength runLength(const geometry::BuiltLayout& built, const std::vector<std::size_t>& pieces) {
    RunLength run;
    for (const std::size_t piece : pieces) {
        run.drawn += built.conductors[piece].built.path.length().in();
        for (const std::size_t entry : entriesOf(built.conductors[piece])) {
            const auto& beyond = built.layout.entries[entry].racewayLength;
            run.raceways += beyond ? beyond->in() : 0.0;
            if (!beyond) {
                run.unstated.push_back(entry);
            }
        }
    }
    return run;
}

std::vector<std::string> racewayLengthsOf(const geometry::BuiltLayout& built,
                                          const std::vector<std::size_t>& entries) {
    std::vector<std::string> inputs;
    for (const std::size_t entry : entries) {
        const std::string input = "length of the raceway at " + entryName(built, entry);
        if (std::find(inputs.begin(), inputs.end(), input) == inputs.end()) {
            inputs.push_back(input);
        }
    }
    return inputs;
}

}  // namespace gw::checks

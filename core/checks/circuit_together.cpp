#include <algorithm>
#include <array>
#include <map>

#include "checks/support.h"
#include "checks/units.h"

/// The conductors of a circuit come in by the same raceway; and in a steel gutter the currents
/// through each opening cancel.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;

bool carriesCurrent(Phase phase) {
    return phase != Phase::g;
}
bool isLine(Phase phase) {
    return phase == Phase::a || phase == Phase::b || phase == Phase::c;
}

/// How many conductors of each phase of one circuit come through one entry.
struct Share {
    std::size_t entry = 0;
    std::map<Phase, int> counts;

    int of(Phase phase) const {
        const auto found = counts.find(phase);
        return found == counts.end() ? 0 : found->second;
    }
};

/// One circuit: where its conductors come in, and which of them the layout does not hold.
struct Run {
    std::size_t circuit = 0;
    std::vector<Share> shares;  ///< in the order of the entries; only those with a conductor of it
    std::map<Phase, int> drawn;
};

Run runOf(const BuiltLayout& built, const Links& links, std::size_t circuit) {
    std::map<std::size_t, Share> byEntry;
    Run run{circuit, {}, {}};
    for (const std::size_t i : links.members[circuit]) {
        const Phase phase = built.layout.conductors[i].phase;
        ++run.drawn[phase];
        for (const std::size_t entry : entriesOf(built.conductors[i])) {
            Share& share = byEntry.try_emplace(entry, Share{entry, {}}).first->second;
            ++share.counts[phase];
        }
    }
    for (auto& [entry, share] : byEntry) {
        run.shares.push_back(std::move(share));
    }
    return run;
}

/// Phases that come in as often as the most frequent one; the neutral and the grounding conductor,
/// of which one may serve several sets in one raceway, at least once.
int asked(const Share& share, Phase phase) {
    if (!isLine(phase)) {
        return 1;
    }
    return std::max({1, share.of(Phase::a), share.of(Phase::b), share.of(Phase::c)});
}

/// The phases that one entry lacks, of those that count.
std::vector<Phase> lacking(const BuiltLayout& built,
                           const Run& run,
                           const Share& share,
                           bool onlyCurrents) {
    std::vector<Phase> lacks;
    for (const Phase phase : built.layout.circuits[run.circuit].phases) {
        const bool counts = !onlyCurrents || carriesCurrent(phase);
        if (counts && share.of(phase) < asked(share, phase)) {
            lacks.push_back(phase);
        }
    }
    return lacks;
}

/// Whether a current of the circuit passes an entry.
bool hasCurrent(const Share& share) {
    return std::any_of(share.counts.begin(), share.counts.end(), [](const auto& one) {
        return carriesCurrent(one.first);
    });
}

/// What the entries of a circuit lack, and what of it is only not drawn yet.
struct Gaps {
    std::vector<std::size_t> entries;  ///< that lack a conductor of the layout
    std::string text;                  ///< "entry Main lacks B and N"
    std::vector<std::string> missing;  ///< conductors the layout does not hold
};

bool allDrawn(const BuiltLayout& built, const Run& run, Phase phase) {
    const auto found = run.drawn.find(phase);
    return found != run.drawn.end() && found->second >= built.layout.circuits[run.circuit].sets;
}

void addGap(Gaps& gaps, const BuiltLayout& built, const Run& run, std::size_t entry, Phase phase) {
    if (allDrawn(built, run, phase)) {
        if (gaps.entries.empty() || gaps.entries.back() != entry) {
            gaps.entries.push_back(entry);
        }
        return;
    }
    const std::string input = "conductors of phase " + std::string(layout::phaseText(phase)) +
                              " of " + circuitName(built, run.circuit);
    if (std::find(gaps.missing.begin(), gaps.missing.end(), input) == gaps.missing.end()) {
        gaps.missing.push_back(input);
    }
}

Gaps gapsOf(const BuiltLayout& built, const Run& run, bool onlyCurrents) {
    Gaps gaps;
    for (const Share& share : run.shares) {
        if (onlyCurrents && !hasCurrent(share)) {
            continue;
        }
        const auto lacks = lacking(built, run, share, onlyCurrents);
        std::vector<std::string> letters;
        for (const Phase phase : lacks) {
            addGap(gaps, built, run, share.entry, phase);
            letters.emplace_back(layout::phaseText(phase));
        }
        if (!lacks.empty() && gaps.text.empty()) {
            gaps.text = entryName(built, share.entry) + " lacks " + listed(letters);
        }
    }
    return gaps;
}

std::string phasesText(const BuiltLayout& built, const Run& run, bool onlyCurrents) {
    std::vector<std::string> letters;
    for (const Phase phase : built.layout.circuits[run.circuit].phases) {
        if (!onlyCurrents || carriesCurrent(phase)) {
            letters.emplace_back(layout::phaseText(phase));
        }
    }
    return listed(letters);
}

std::string comesBy(const BuiltLayout& built, const Run& run) {
    return circuitName(built, run.circuit) + " comes in by " +
           counted(run.shares.size(), "entry", "entries");
}

/// Entries at fault, of which none is allowed.
Finding judged(const BuiltLayout& built, const Run& run, const Gaps& gaps) {
    Finding finding;
    finding.check = Check::circuitTogether;
    finding.subjects = {built.layout.circuits[run.circuit].id};
    for (const std::size_t entry : gaps.entries) {
        finding.subjects.push_back(built.layout.entries[entry].id);
    }
    const std::size_t shown = gaps.entries.empty() ? run.shares.front().entry : gaps.entries[0];
    finding.place = built.entries[shown].centre;
    judge(finding, count(gaps.entries.size()), count(0), Bound::atMost);
    if (finding.verdict == Verdict::meets && !gaps.missing.empty()) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = gaps.missing;
    }
    return finding;
}

Finding togetherFinding(const BuiltLayout& built, const Run& run) {
    const Gaps gaps = gapsOf(built, run, false);
    Finding finding = judged(built, run, gaps);
    finding.citation = sectionFor(built, standards::Rule::circuitTogether);
    finding.working = sentence(
        comesBy(built, run) + (gaps.text.empty() ? ", each with " : " that should each have ") +
        phasesText(built, run, false) + (gaps.text.empty() ? "" : ": " + gaps.text));
    return finding;
}

/// A circuit of which only one conductor carries current has its return somewhere else.
bool lacksReturn(const BuiltLayout& built, const Run& run) {
    const auto& phases = built.layout.circuits[run.circuit].phases;
    return std::count_if(phases.begin(), phases.end(), carriesCurrent) == 1;
}

bool anyCurrent(const Run& run) {
    return std::any_of(run.shares.begin(), run.shares.end(), hasCurrent);
}

/// Whether the conductors pass separate holes of one wall, between which slots may be cut.
bool mayBeSlotted(const BuiltLayout& built, const Gaps& gaps) {
    const auto wallOf = [&](std::size_t entry) { return built.layout.entries[entry].wall; };
    return gaps.entries.size() > 1 &&
           std::all_of(gaps.entries.begin(), gaps.entries.end(), [&](std::size_t entry) {
               return wallOf(entry) == wallOf(gaps.entries.front());
           });
}

/// "slots between the holes of entry E1 and entry E2".
std::string slotsBetween(const BuiltLayout& built, const Gaps& gaps) {
    std::vector<std::string> names;
    for (const std::size_t entry : gaps.entries) {
        names.push_back(entryName(built, entry));
    }
    return "slots between the holes of " + listed(names);
}

/// Separate holes are allowed where slots join them, or one opening through a plate that insulates
/// takes them all; the layout cannot state it.
void considerSlots(Finding& finding, const BuiltLayout& built, const Gaps& gaps) {
    finding.citation = sectionFor(built, standards::Rule::inductionOpenings);
    if (mayBeSlotted(built, gaps)) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = gaps.missing;
        finding.missing.insert(finding.missing.begin(), slotsBetween(built, gaps));
    }
}

Finding inductionFinding(const BuiltLayout& built, const Run& run) {
    Gaps gaps = gapsOf(built, run, true);
    if (lacksReturn(built, run)) {
        gaps.text = "with what its current returns is not stated";
        gaps.missing.push_back("return conductor of " + circuitName(built, run.circuit));
    }
    Finding finding = judged(built, run, gaps);
    finding.citation = sectionFor(built, standards::Rule::induction);
    std::string remedy;
    if (finding.verdict == Verdict::breach) {
        considerSlots(finding, built, gaps);
        remedy = finding.verdict == Verdict::cannotTell
                     ? "; that would do where slots join the holes, which is not stated"
                 : gaps.entries.size() > 1 ? "; no slots join holes of different walls"
                                           : "";
    }
    finding.working = sentence(comesBy(built, run) + " in steel, where the currents of " +
                               phasesText(built, run, true) + " together heat no opening" +
                               (gaps.text.empty() ? "" : ": " + gaps.text) + remedy);
    return finding;
}

/// Jumpers between neutral and grounding conductors are no circuit that leaves.
bool concerns(const BuiltLayout& built, const Run& run) {
    return !run.shares.empty() && built.layout.circuits[run.circuit].role != layout::Role::bonding;
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    const Run run = runOf(built, facts.links, circuit);
    if (!concerns(built, run)) {
        return;
    }
    findings.push_back(togetherFinding(built, run));
    if (built.gutter().material == layout::GutterMaterial::steel && anyCurrent(run)) {
        findings.push_back(inductionFinding(built, run));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::circuit, reads::kNothing, ofCircuit}});

}  // namespace

std::span<const Section> circuitTogetherSections() {
    return kSections;
}

std::vector<Finding> checkCircuitTogether(const BuiltLayout& built) {
    return runChecks(built, {Check::circuitTogether});
}

}  // namespace gw::checks

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <functional>
#include <set>

#include "checks/run_length.h"
#include "checks/set_grouping.h"
#include "checks/support.h"
#include "checks/units.h"
#include "standards/tables.h"

/// Conductors that share a phase between them: thick enough, alike, of one length and set by set
/// together, so that each carries its part.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;
using standards::Rule;
using Conductors = std::vector<std::size_t>;

/// The greatest spread of lengths, percent of the shortest, that is let pass. Common practice, no
/// source: the rule itself gives no tolerance. At 5 % the shorter of two carries 1.05 / 2.05 of the
/// current, 51.2 %.
constexpr double kLargestSpread = 5.0;

/// Source: NFPA 70 310.10(G)(1), 310.10(H)(1) in 2017.
const units::WireSize kLeastSize = units::WireSize::of("1/0");

std::string phaseName(const BuiltLayout& built, const PhaseRuns& runs) {
    return "phase " + std::string(layout::phaseText(runs.phase)) + " of " +
           circuitName(built, runs.circuit);
}

Finding findingFor(const BuiltLayout& built, const PhaseRuns& runs, Rule rule) {
    Finding finding;
    finding.check = Check::parallelSets;
    finding.citation = sectionFor(built, rule);
    for (const std::size_t i : runs.all()) {
        finding.subjects.emplace_back(built.layout.conductors[i].id);
    }
    const auto& path = built.conductors[runs.all().front()].built.path;
    finding.place = path.pointAt(path.length().in() / 2.0);
    return finding;
}

/// "set 2 of phase A of circuit S", for those of which nothing is drawn.
std::vector<std::string> notDrawn(const BuiltLayout& built, const PhaseRuns& runs) {
    std::vector<std::string> missing;
    for (std::size_t set = 0; set < runs.sets.size(); ++set) {
        if (runs.sets[set].empty()) {
            missing.push_back("set " + std::to_string(set + 1) + " of " + phaseName(built, runs));
        }
    }
    return missing;
}

// ---- size -----------------------------------------------------------------------------------

Finding sizeFinding(const BuiltLayout& built, const PhaseRuns& runs) {
    const auto all = runs.all();
    const std::size_t least =
        *std::min_element(all.begin(), all.end(), [&](std::size_t a, std::size_t b) {
            return built.layout.conductors[a].size < built.layout.conductors[b].size;
        });
    const auto size = built.layout.conductors[least].size;
    Finding finding = findingFor(built, runs, Rule::parallelSize);
    finding.verdict = size < kLeastSize ? Verdict::breach : Verdict::meets;
    finding.working = sentence(phaseName(built, runs) + ": the smallest in parallel is " +
                               size.text() + ", where " + kLeastSize.text() + " is the least");
    return finding;
}

// ---- alike ----------------------------------------------------------------------------------

/// What parallel conductors have in common, or should have.
struct Trait {
    std::string name;
    Verdict whenUnlike;
    std::function<std::string(const layout::Conductor&)> of;  ///< empty: not stated
};

/// Stranding is not in the rule's list; a strand class more or less changes the resistance little.
std::vector<Trait> traits() {
    using layout::Conductor;
    return {{"size", Verdict::breach, [](const Conductor& one) { return one.size.text(); }},
            {"metal",
             Verdict::breach,
             [](const Conductor& one) {
                 return one.metal ? std::string(standards::metalText(*one.metal)) : "";
             }},
            {"insulation",
             Verdict::breach,
             [](const Conductor& one) {
                 return one.insulation ? std::string(standards::insulationText(*one.insulation))
                                       : "";
             }},
            {"stranding", Verdict::caution, [](const Conductor& one) {
                 return one.stranding ? std::string(standards::strandingText(*one.stranding)) : "";
             }}};
}

/// How a comparison came out.
struct Alike {
    Verdict verdict = Verdict::meets;
    std::string text;
    std::vector<std::string> missing{};
};

Alike compare(const BuiltLayout& built, const Conductors& conductors, const Trait& trait) {
    std::set<std::string> values;
    Alike alike;
    for (const std::size_t i : conductors) {
        const std::string value = trait.of(built.layout.conductors[i]);
        if (value.empty()) {
            alike.missing.push_back(trait.name + " of " + conductorName(built, i));
        } else {
            values.insert(value);
        }
    }
    if (values.size() > 1) {
        return {trait.whenUnlike,
                trait.name + " differs (" +
                    listed(std::vector<std::string>(values.begin(), values.end())) + ")"};
    }
    alike.verdict = alike.missing.empty() ? Verdict::meets : Verdict::cannotTell;
    alike.text = values.empty() ? trait.name + " not stated" : *values.begin();
    return alike;
}

/// How a set ends: "in a port, in a raceway", and the parts whose ports it uses.
struct Ends {
    std::multiset<std::string> manners;
    std::multiset<std::string> parts;
};

void addEnd(Ends& ends, const BuiltLayout& built, const geometry::BuiltEnd& end) {
    switch (end.kind) {
        case geometry::BuiltEnd::Kind::entry:
            ends.manners.insert("raceway");
            break;
        case geometry::BuiltEnd::Kind::spare:
            ends.manners.insert("cap");
            break;
        case geometry::BuiltEnd::Kind::port:
            ends.manners.insert("port");
            ends.parts.insert(built.layout.blocks[given(end.block)].part.text());
            break;
    }
}

Ends endsOf(const BuiltLayout& built, const Conductors& pieces) {
    Ends ends;
    for (const std::size_t piece : pieces) {
        const auto& conductor = built.conductors[piece];
        addEnd(ends, built, conductor.from);
        addEnd(ends, built, conductor.to);
        for (const auto& pass : conductor.passes) {
            ends.manners.insert("pass");
            ends.parts.insert(built.layout.blocks[pass.block].part.text());
        }
    }
    return ends;
}

/// Ends in ports of different parts: alike in kind, unlike, or not known.
Alike compareParts(const BuiltLayout& built, const std::set<std::string>& parts) {
    std::set<parts::ConnectorKind> kinds;
    Alike alike{Verdict::caution, "the connectors are of different parts", {}};
    for (const std::string& id : parts) {
        const auto& kind = built.shelf.at(parts::PartId(id)).listing.kind;
        if (kind) {
            kinds.insert(*kind);
        } else {
            alike.missing.push_back("kind of part " + id);
        }
    }
    if (kinds.size() > 1) {
        return {Verdict::breach, "the kind of connector differs"};
    }
    alike.verdict = alike.missing.empty() ? Verdict::caution : Verdict::cannotTell;
    return alike;
}

Alike compareEnds(const BuiltLayout& built, const PhaseRuns& runs) {
    std::set<std::multiset<std::string>> manners;
    std::set<std::multiset<std::string>> used;
    std::set<std::string> parts;
    for (const auto& pieces : runs.sets) {
        if (!pieces.empty()) {
            const Ends ends = endsOf(built, pieces);
            manners.insert(ends.manners);
            used.insert(ends.parts);
            parts.insert(ends.parts.begin(), ends.parts.end());
        }
    }
    if (manners.size() > 1) {
        return {Verdict::breach, "they end in different ways"};
    }
    return used.size() > 1 ? compareParts(built, parts) : Alike{Verdict::meets, "ends alike"};
}

/// The graver of two answers, with what both miss; the unlike ones are told.
Alike joined(const Alike& a, const Alike& b) {
    Alike both{graver(a.verdict, b.verdict), {}, a.missing};
    both.missing.insert(both.missing.end(), b.missing.begin(), b.missing.end());
    const bool aTells = a.verdict == both.verdict;
    const bool bTells = b.verdict == both.verdict;
    both.text = aTells && bTells ? a.text + ", " + b.text : aTells ? a.text : b.text;
    return both;
}

Finding samenessFinding(const BuiltLayout& built, const PhaseRuns& runs) {
    Alike alike = compareEnds(built, runs);
    const auto all = traits();
    for (auto trait = all.rbegin(); trait != all.rend(); ++trait) {
        alike = joined(compare(built, runs.all(), *trait), alike);
    }
    const auto absent = notDrawn(built, runs);
    if (!absent.empty()) {
        alike = joined(alike, {Verdict::cannotTell, "not all sets are drawn", absent});
    }
    Finding finding = findingFor(built, runs, Rule::parallelSameness);
    finding.verdict = alike.verdict;
    finding.missing =
        alike.verdict == Verdict::cannotTell ? alike.missing : std::vector<std::string>{};
    finding.working = sentence(phaseName(built, runs) + ", " +
                               counted(runs.sets.size(), "set", "sets") + ": " + alike.text);
    return finding;
}

// ---- length and current ---------------------------------------------------------------------

using Ohms = std::complex<double>;

standards::ConduitMaterial materialOf(standards::RacewayType raceway) {
    return raceway == standards::RacewayType::pvc40 ? standards::ConduitMaterial::pvc
                                                    : standards::ConduitMaterial::steel;
}

standards::ConduitMaterial materialOf(const layout::Gutter& gutter) {
    switch (gutter.material) {
        case layout::GutterMaterial::steel:
            return standards::ConduitMaterial::steel;
        case layout::GutterMaterial::aluminium:
            return standards::ConduitMaterial::aluminium;
        case layout::GutterMaterial::stainlessSteel:  // hardly magnetic
        case layout::GutterMaterial::nonmetallic:
            break;
    }
    return standards::ConduitMaterial::pvc;
}

/// Empty where the table has no value, or what it asks is not stated.
std::optional<Ohms> ohmsOf(const BuiltLayout& built, std::size_t conductor) {
    const auto& meant = built.layout.conductors[conductor];
    Ohms sum;
    const auto add = [&](double inches, standards::ConduitMaterial material) {
        const auto found =
            standards::impedance(meant.size, *meant.metal, material, built.layout.edition);
        if (found) {
            sum += Ohms(found->value.ohmsPerKft, found->value.reactancePerKft) * inches / 12000.0;
        }
        return found.has_value();
    };
    if (!meant.metal ||
        !add(built.conductors[conductor].built.path.length().in(), materialOf(built.gutter()))) {
        return std::nullopt;
    }
    for (const std::size_t i : entriesOf(built.conductors[conductor])) {
        const auto& entry = built.layout.entries[i];
        if (!entry.raceway || !entry.racewayLength ||
            !add(entry.racewayLength->in(), materialOf(*entry.raceway))) {
            return std::nullopt;
        }
    }
    return sum;
}

/// What each set carries, percent: by impedance, or by length alone where that is not known.
std::vector<double> sharesOf(const BuiltLayout& built,
                             const PhaseRuns& runs,
                             const std::vector<double>& lengths) {
    std::vector<Ohms> flows;
    bool known = true;
    for (const auto& pieces : runs.sets) {
        Ohms sum;
        for (const std::size_t piece : pieces) {
            const auto ohms = ohmsOf(built, piece);
            known = known && ohms.has_value();
            sum += ohms.value_or(Ohms(1.0));
        }
        flows.push_back(1.0 / sum);
    }
    if (!known) {
        std::transform(lengths.begin(), lengths.end(), flows.begin(), [](double length) {
            return Ohms(1.0 / length);
        });
    }
    Ohms total;
    for (const Ohms& flow : flows) {
        total += flow;
    }
    std::vector<double> shares;
    shares.reserve(flows.size());
    for (const Ohms& flow : flows) {
        shares.push_back(std::abs(flow / total) * 100.0);
    }
    return shares;
}

/// "50.7 %, 49.3 %" set by set; of many sets only the least and the greatest.
std::string sharesText(const std::vector<double>& shares) {
    constexpr std::size_t kTold = 6;
    if (shares.size() > kTold) {
        const auto [least, most] = std::minmax_element(shares.begin(), shares.end());
        return "from " + toText(percent(*least)) + " to " + toText(percent(*most));
    }
    std::vector<std::string> words;
    words.reserve(shares.size());
    for (const double share : shares) {
        words.push_back(toText(percent(share)));
    }
    return listed(words);
}

/// The lengths where all are known.
void judgeLengths(Finding& finding,
                  const BuiltLayout& built,
                  const PhaseRuns& runs,
                  const std::vector<double>& lengths) {
    const auto [least, most] = std::minmax_element(lengths.begin(), lengths.end());
    const double spread = *most - *least;
    judge(finding, percent(spread / *least * 100.0), percent(kLargestSpread), Bound::atMost);
    if (finding.verdict == Verdict::breach) {
        finding.verdict = Verdict::caution;
    }
    finding.working =
        sentence(phaseName(built, runs) + ": " + inText(*least) + " to " + inText(*most) +
                 ", a spread of " + inText(spread) + " or " + toText(*finding.measured) +
                 "; the sets carry " + sharesText(sharesOf(built, runs, lengths)) +
                 " of the current; the rule gives no tolerance");
}

Finding lengthFinding(const BuiltLayout& built, const PhaseRuns& runs) {
    Finding finding = findingFor(built, runs, Rule::parallelSameness);
    finding.citation.note = "no tolerance for length; " + toText(percent(kLargestSpread)) +
                            " is common practice, no source";
    std::vector<double> lengths;
    std::vector<double> drawn;
    std::vector<std::size_t> unstated;
    for (const auto& pieces : runs.sets) {
        const RunLength run = runLength(built, pieces);
        lengths.push_back(run.total());
        drawn.push_back(run.drawn);
        unstated.insert(unstated.end(), run.unstated.begin(), run.unstated.end());
    }
    finding.missing = racewayLengthsOf(built, unstated);
    const auto absent = notDrawn(built, runs);
    finding.missing.insert(finding.missing.end(), absent.begin(), absent.end());
    if (finding.missing.empty()) {
        judgeLengths(finding, built, runs, lengths);
        return finding;
    }
    const auto [least, most] = std::minmax_element(drawn.begin(), drawn.end());
    finding.verdict = Verdict::cannotTell;
    finding.working =
        sentence(phaseName(built, runs) + ": " + inText(*least) + " to " + inText(*most) +
                 " in the gutter, and not all lengths beyond it are known");
    return finding;
}

bool concerns(const BuiltLayout& built, const PhaseRuns& runs) {
    return runs.sets.size() > 1 && runs.phase != Phase::g &&
           built.layout.circuits[runs.circuit].role != layout::Role::bonding;
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    for (const PhaseRuns& runs : facts.links.runs[circuit]) {
        if (concerns(built, runs)) {
            findings.push_back(sizeFinding(built, runs));
            findings.push_back(samenessFinding(built, runs));
            findings.push_back(lengthFinding(built, runs));
        }
    }
    const auto& meant = built.layout.circuits[circuit];
    if (meant.sets > 1 && meant.role != layout::Role::bonding) {
        if (auto finding = setGroupingFinding(built, facts, circuit)) {
            findings.push_back(std::move(*finding));
        }
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::circuit, reads::kPaths, ofCircuit}});

}  // namespace

std::span<const Section> parallelSetsSections() {
    return kSections;
}

std::vector<Finding> checkParallelSets(const BuiltLayout& built) {
    return runChecks(built, {Check::parallelSets});
}

}  // namespace gw::checks

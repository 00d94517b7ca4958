#include <algorithm>
#include <array>

#include "checks/support.h"
#include "checks/units.h"

/// Every tap says what it supplies, so that it can be labelled where it leaves the gutter's
/// conductors: the code asks for it in an auxiliary gutter; elsewhere it is good practice.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using standards::GutterArticle;
using standards::Rule;

bool isBlank(const std::string& text) {
    return text.find_first_not_of(' ') == std::string::npos;
}

bool isLabelled(const layout::Circuit& circuit) {
    return circuit.supplies && !isBlank(*circuit.supplies);
}

/// A long text is not repeated: the finding is one row of a table.
std::string labelText(const std::string& supplies) {
    constexpr std::size_t kMost = 100;  // bytes
    return supplies.size() <= kMost ? "it supplies " + supplies : "what it supplies is stated";
}

/// Taps by their role, and what claims a tap rule or comes off another circuit as a branch of it.
/// A splice that carries a service or feeder on is no tap, nor is a bonding jumper.
bool isTap(const layout::Circuit& circuit) {
    using layout::Role;
    const bool claimsRule = circuit.tapRule && *circuit.tapRule != layout::TapRule::none;
    return circuit.role == Role::tap ||
           (circuit.joins && (circuit.role == Role::branch || claimsRule));
}

/// Where the code asks for the label, a name the layout does not give is only not stated yet: it
/// cannot be told what the label would say. Where it does not, its lack is a matter of good
/// practice.
Finding findingFor(const BuiltLayout& built, std::size_t index) {
    const layout::Circuit& circuit = built.layout.circuits[index];
    const bool required = built.gutter().article == GutterArticle::auxiliaryGutter;
    const std::string name = circuitName(built, index);
    Finding finding;
    finding.check = Check::tapLabels;
    finding.subjects = {circuit.id};
    finding.citation = sectionFor(built, Rule::tapsLabelled);
    if (isLabelled(circuit)) {
        finding.verdict = Verdict::meets;
        finding.working =
            sentence("the tap of " + name + " can be labelled: " + labelText(*circuit.supplies));
    } else if (required) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {"what " + name + " supplies"};
        finding.working = sentence("what the tap of " + name +
                                   " supplies is not stated: in an auxiliary gutter each tap is "
                                   "labelled with it");
    } else {
        finding.verdict = Verdict::caution;
        finding.working =
            sentence("what the tap of " + name +
                     " supplies is not stated: a label is good practice in a wireway");
    }
    return finding;
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts&,
               std::size_t circuit) {
    if (isTap(built.layout.circuits[circuit])) {
        findings.push_back(findingFor(built, circuit));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::circuit, reads::kNothing, ofCircuit}});

}  // namespace

std::span<const Section> tapLabelsSections() {
    return kSections;
}

std::vector<Finding> checkTapLabels(const BuiltLayout& built) {
    return runChecks(built, {Check::tapLabels});
}

}  // namespace gw::checks

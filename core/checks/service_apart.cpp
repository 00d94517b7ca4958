#include <algorithm>
#include <set>

#include "base/contract.h"
#include "checks/entry_users.h"
#include "checks/support.h"

/// Conductors ahead of the service disconnects share no raceway with others.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Role;
using layout::TapRule;

/// On which side of the service disconnects a circuit lies.
enum class Side {
    service,
    other,
    exempt,   ///< bonding: may lie with either
    unknown,  ///< a tap of which neither its source nor its rule is stated
};

/// The circuit at the head of a chain of taps and splices: all are one node with it, for no device
/// may stand in a gutter.
const Circuit& headOf(const BuiltLayout& built, const Circuit& circuit) {
    const Circuit* head = &circuit;
    while (head->joins) {
        const auto next = built.circuitIndex(*head->joins);
        CONTRACT(next.has_value());
        head = &built.layout.circuits[*next];
    }
    return *head;
}

Side sideOfTap(const std::optional<TapRule>& rule) {
    if (!rule) {
        return Side::unknown;
    }
    switch (*rule) {
        case TapRule::serviceConductors:
            return Side::service;
        case TapRule::tenFoot:
        case TapRule::twentyFiveFoot:
        case TapRule::highBay:
        case TapRule::outside:
            return Side::other;
        case TapRule::none:
            return Side::unknown;
    }
    return Side::unknown;
}

Side sideOf(const BuiltLayout& built, const Circuit& circuit) {
    if (circuit.role == Role::bonding) {
        return Side::exempt;
    }
    const Circuit& head = headOf(built, circuit);
    switch (head.role) {
        case Role::service:
            return Side::service;
        case Role::tap:
            return sideOfTap(head.tapRule);
        case Role::feeder:
        case Role::branch:
            return Side::other;
        case Role::bonding:
            return Side::exempt;
    }
    return Side::unknown;
}

Side sideOf(const BuiltLayout& built, const layout::Conductor& conductor) {
    if (conductor.phase == layout::Phase::g) {
        return Side::exempt;
    }
    const auto circuit = built.circuitIndex(conductor.circuit);
    CONTRACT(circuit.has_value());
    return sideOf(built, built.layout.circuits[*circuit]);
}

/// The conductors of one raceway by side.
struct Company {
    std::vector<std::size_t> service;
    std::vector<std::size_t> others;
    std::set<std::size_t> doubtful;  ///< circuits

    bool mixed() const { return !service.empty() && !others.empty(); }
    bool mayBeMixed() const {
        const std::size_t sure = (service.empty() ? 0U : 1U) + (others.empty() ? 0U : 1U);
        return doubtful.size() + sure > 1 && !doubtful.empty();
    }
    bool concerned() const { return !service.empty() || mayBeMixed(); }
};

Company companyOf(const BuiltLayout& built, const std::vector<std::size_t>& conductors) {
    Company company;
    for (const std::size_t i : conductors) {
        const auto& conductor = built.layout.conductors[i];
        switch (sideOf(built, conductor)) {
            case Side::service:
                company.service.push_back(i);
                break;
            case Side::other:
                company.others.push_back(i);
                break;
            case Side::unknown:
                company.doubtful.insert(built.circuitIndex(conductor.circuit).value_or(0));
                break;
            case Side::exempt:
                break;
        }
    }
    return company;
}

std::vector<std::string> sidesMissing(const BuiltLayout& built, const Company& company) {
    std::vector<std::string> missing;
    for (const std::size_t circuit : company.doubtful) {
        missing.push_back("what " + circuitName(built, circuit) + " joins");
    }
    return missing;
}

/// Others among service conductors, of which none is allowed.
void judgeCompany(Finding& finding, const BuiltLayout& built, const Company& company) {
    const std::size_t strangers = company.service.empty() ? 0 : company.others.size();
    judge(finding, count(strangers), count(0), Bound::atMost);
    if (finding.verdict == Verdict::meets && company.mayBeMixed()) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = sidesMissing(built, company);
    }
}

std::string companyText(const BuiltLayout& built, const Company& company) {
    std::string text = counted(company.service.size(), "service conductor", "service conductors") +
                       " and " + counted(company.others.size(), "other", "others");
    if (company.mixed()) {
        text += ", such as " + conductorName(built, company.others.front());
    }
    if (company.mayBeMixed()) {
        text += ", and ahead of which disconnect " +
                counted(company.doubtful.size(), "circuit lies", "circuits lie") + " is not stated";
    }
    return text;
}

Finding findingOf(const BuiltLayout& built, const Company& company, const std::string& where) {
    Finding finding;
    finding.check = Check::serviceApart;
    finding.citation = sectionFor(built, standards::Rule::serviceConductorsApart);
    judgeCompany(finding, built, company);
    finding.working = sentence(where + " holds " + companyText(built, company));
    return finding;
}

Finding findingAt(const BuiltLayout& built, std::size_t entry, const Company& company) {
    Finding finding = findingOf(built, company, "the raceway at " + entryName(built, entry));
    finding.subjects = {built.layout.entries[entry].id};
    finding.place = built.entries[entry].centre;
    return finding;
}

std::vector<std::size_t> allConductors(const BuiltLayout& built) {
    std::vector<std::size_t> all(built.conductors.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i] = i;
    }
    return all;
}

}  // namespace

std::vector<Finding> checkServiceApart(const BuiltLayout& built) {
    std::vector<Finding> findings;
    const auto article = built.gutter().article;
    const Company inside = companyOf(built, allConductors(built));
    if (article != standards::GutterArticle::auxiliaryGutter && inside.concerned()) {
        findings.push_back(
            findingOf(built, inside, "this " + std::string(standards::articleText(article))));
    }
    const auto users = conductorsAtEntries(built);
    for (std::size_t entry = 0; entry < users.size(); ++entry) {
        const Company company = companyOf(built, users[entry]);
        if (company.concerned()) {
            findings.push_back(findingAt(built, entry, company));
        }
    }
    return findings;
}

}  // namespace gw::checks

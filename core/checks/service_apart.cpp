#include <array>
#include <numeric>
#include <set>

#include "checks/support.h"
#include "checks/units.h"

/// Conductors ahead of the service disconnects share no raceway with others.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;

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

Company companyOf(const BuiltLayout& built,
                  const Links& links,
                  const std::vector<std::size_t>& conductors) {
    Company company;
    for (const std::size_t i : conductors) {
        switch (links.sideOf(built, i)) {
            case Side::service:
                company.service.push_back(i);
                break;
            case Side::other:
                company.others.push_back(i);
                break;
            case Side::unknown:
                company.doubtful.insert(links.circuitOf[i]);
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

void ofGutter(std::vector<Finding>& findings,
              const BuiltLayout& built,
              const Facts& facts,
              std::size_t) {
    const auto article = built.gutter().article;
    if (article == standards::GutterArticle::auxiliaryGutter) {
        return;
    }
    std::vector<std::size_t> all(built.conductors.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    const Company inside = companyOf(built, facts.links, all);
    if (inside.concerned()) {
        findings.push_back(
            findingOf(built, inside, "this " + std::string(standards::articleText(article))));
    }
}

void ofEntry(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t entry) {
    const Company company = companyOf(built, facts.links, facts.links.atEntries[entry]);
    if (company.concerned()) {
        findings.push_back(findingAt(built, entry, company));
    }
}

constexpr auto kSections = std::to_array<Section>(
    {{Unit::gutter, reads::kNothing, ofGutter}, {Unit::entry, reads::kNothing, ofEntry}});

}  // namespace

std::span<const Section> serviceApartSections() {
    return kSections;
}

std::vector<Finding> checkServiceApart(const BuiltLayout& built) {
    return runChecks(built, {Check::serviceApart});
}

}  // namespace gw::checks

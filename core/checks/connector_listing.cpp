#include <algorithm>
#include <array>
#include <set>

#include "checks/support.h"
#include "checks/units.h"

/// Every connector is used within its listing: its voltage, its short-circuit rating, its mark for
/// the line side of a service, the enclosure it asks for, and no uninsulated live part.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;
using parts::ConnectorKind;
using standards::Edition;
using standards::Rule;

// ---- what lands in a block ------------------------------------------------------------------

struct Landed {
    std::size_t block = 0;
    const Links& links;
    std::vector<std::size_t> conductors;  ///< by id
};

Landed landedIn(const BuiltLayout& built, const Facts& facts, std::size_t block) {
    std::vector<std::size_t> conductors;
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        for (const Occupant& occupant : facts.occupancy.of(block, port)) {
            conductors.push_back(occupant.conductor);
        }
    }
    facts.links.sortById(conductors);
    conductors.erase(std::unique(conductors.begin(), conductors.end()), conductors.end());
    return {block, facts.links, std::move(conductors)};
}

const parts::Part& partOf(const BuiltLayout& built, const Landed& landed) {
    return *built.blocks[landed.block].part;
}

template <class Is>
bool any(const BuiltLayout& built, const Landed& landed, const Is& is) {
    return std::any_of(landed.conductors.begin(), landed.conductors.end(), [&](std::size_t i) {
        return is(built.layout.conductors[i]);
    });
}

bool carriesCurrent(const layout::Conductor& conductor) {
    return conductor.phase != Phase::g;
}
bool isLive(const layout::Conductor& conductor) {
    return conductor.phase != Phase::g && conductor.phase != Phase::n;
}

std::string ofPart(const BuiltLayout& built, const Landed& landed, const std::string& what) {
    return what + " of part " + partOf(built, landed).id.text();
}

Finding findingAt(const BuiltLayout& built, const Landed& landed, Rule rule) {
    Finding finding;
    finding.check = Check::connectorListing;
    finding.subjects = {built.layout.blocks[landed.block].id};
    finding.place = built.blocks[landed.block].body.centre();
    finding.citation = sectionFor(built, rule);
    return finding;
}

void cannotTell(Finding& finding, std::vector<std::string> missing) {
    finding.verdict = Verdict::cannotTell;
    finding.missing = std::move(missing);
}

// ---- what the systems state -----------------------------------------------------------------

/// The highest of a fact of the systems that land in a block, and where it is not stated.
template <class T>
struct Highest {
    std::optional<T> value;
    std::vector<std::string> missing;
};

template <class T>
Highest<T> highestAt(const BuiltLayout& built,
                     const Landed& landed,
                     std::optional<T> layout::System::*fact,
                     const std::string& name) {
    Highest<T> highest;
    std::set<std::string> missing;
    for (const std::size_t i : landed.conductors) {
        const layout::System& system =
            built.layout.systems[landed.links.systemOf[landed.links.circuitOf[i]]];
        if (!carriesCurrent(built.layout.conductors[i])) {
            continue;
        }
        if (const auto& stated = system.*fact) {
            highest.value = std::max(highest.value.value_or(T{}), *stated);
        } else {
            missing.insert(name + " of system " + system.id.text());
        }
    }
    highest.missing.assign(missing.begin(), missing.end());
    return highest;
}

/// What is missing does not change that the highest known is too much.
void cannotTellUnlessBreach(Finding& finding, std::vector<std::string> missing) {
    if (finding.verdict != Verdict::breach && !missing.empty()) {
        cannotTell(finding, std::move(missing));
    }
}

// ---- voltage --------------------------------------------------------------------------------

Quantity volts(int value) {
    return {static_cast<double>(value), Quantity::Unit::volts};
}

std::string voltsText(const std::optional<int>& between, const std::optional<int>& listed) {
    return (between ? toText(volts(*between)) + " between phases"
                    : std::string("the volts between phases are not stated")) +
           ", and " +
           (listed ? "its part is listed for " + toText(volts(*listed))
                   : std::string("for how many its part is listed is not stated"));
}

Finding voltageFinding(const BuiltLayout& built, const Landed& landed) {
    Finding finding = findingAt(built, landed, Rule::listingAndInstructions);
    const auto& listed = partOf(built, landed).listing.volts;
    auto highest =
        highestAt(built, landed, &layout::System::voltsBetweenPhases, "volts between phases");
    if (listed && highest.value) {
        judge(finding, volts(*highest.value), volts(*listed), Bound::atMost);
    }
    if (!listed) {
        highest.missing.push_back(ofPart(built, landed, "listed volts"));
    }
    cannotTellUnlessBreach(finding, std::move(highest.missing));
    finding.working =
        sentence(blockName(built, landed.block) + ": " + voltsText(highest.value, listed));
    return finding;
}

// ---- short-circuit rating -------------------------------------------------------------------

Quantity kiloamperes(double value) {
    return {value, Quantity::Unit::kiloamperes};
}

std::string faultText(const std::optional<double>& available, const std::optional<double>& rated) {
    return (available ? toText(kiloamperes(*available)) + " of fault current are available"
                      : std::string("the available fault current is not stated")) +
           ", and " +
           (rated ? "its part is rated for " + toText(kiloamperes(*rated))
                  : std::string("for how much its part is rated is not stated"));
}

/// Power distribution blocks are marked with a rating; of other connectors what is not stated is
/// not asked.
std::optional<Finding> faultFinding(const BuiltLayout& built, const Landed& landed) {
    const auto& listing = partOf(built, landed).listing;
    const auto& rated = listing.shortCircuitKiloamperes;
    if ((!rated && listing.kind == ConnectorKind::wireConnector) ||
        !any(built, landed, carriesCurrent)) {
        return std::nullopt;
    }
    Finding finding = findingAt(built, landed, Rule::shortCircuitRating);
    auto highest =
        highestAt(built, landed, &layout::System::faultKiloamperes, "available fault current");
    if (rated && highest.value) {
        judge(finding, kiloamperes(*highest.value), kiloamperes(*rated), Bound::atMost);
    }
    if (!listing.kind && !rated) {
        highest.missing.push_back(kindMissing(built, landed.block));
    }
    if (!rated) {
        highest.missing.push_back(ofPart(built, landed, "short-circuit rating"));
    }
    cannotTellUnlessBreach(finding, std::move(highest.missing));
    finding.working =
        sentence(blockName(built, landed.block) + ": " + faultText(highest.value, rated));
    return finding;
}

// ---- line side of the service ---------------------------------------------------------------

/// What of a service lands in a block.
struct Service {
    std::optional<std::size_t> first;  ///< a conductor ahead of the service disconnects
    std::set<std::size_t> doubtful;    ///< circuits that may be
    bool concerned() const { return first || !doubtful.empty(); }
};

Service serviceAt(const BuiltLayout& built, const Landed& landed) {
    Service service;
    for (const std::size_t i : landed.conductors) {
        const Side side = landed.links.sideOf(built, i);
        if (side == Side::service && !service.first) {
            service.first = i;
        }
        if (side == Side::unknown) {
            service.doubtful.insert(landed.links.circuitOf[i]);
        }
    }
    return service;
}

std::vector<std::string> joinsMissing(const BuiltLayout& built, const Service& service) {
    std::vector<std::string> missing;
    for (const std::size_t circuit : service.doubtful) {
        missing.push_back("what " + circuitName(built, circuit) + " joins");
    }
    return missing;
}

std::string serviceText(const BuiltLayout& built, const Service& service) {
    return service.first
               ? conductorName(built, *service.first) + " is ahead of the service disconnects"
               : circuitName(built, *service.doubtful.begin()) +
                     " may be ahead of the service disconnects";
}

std::string markText(const std::optional<bool>& marked) {
    if (!marked) {
        return "whether its part is marked for the line side is not stated";
    }
    return *marked ? "its part is marked for the line side"
                   : "its part is not marked for the line side";
}

/// In 2017 the mark is asked of distribution blocks only; in 2020 of all connectors, those that are
/// no distribution blocks from 2023 on.
std::string markAsked(Edition edition, const std::optional<ConnectorKind>& kind) {
    if (edition == Edition::nec2017) {
        return kind ? ", asked of distribution blocks" : ", asked of distribution blocks only";
    }
    const bool dated = edition == Edition::nec2020 && kind != ConnectorKind::distributionBlock;
    return dated ? ", asked of connectors since 1 January 2023" : "";
}

/// Where no section is recorded the mark is good practice.
Verdict unmarked(const Finding& finding) {
    return finding.citation.section.empty() ? Verdict::caution : Verdict::breach;
}

std::vector<std::string> markMissing(const BuiltLayout& built,
                                     const Landed& landed,
                                     const Service& service) {
    const auto& listing = partOf(built, landed).listing;
    std::vector<std::string> missing;
    if (built.layout.edition == Edition::nec2017 && !listing.kind) {
        missing.push_back(kindMissing(built, landed.block));
    }
    if (!listing.lineSideOfService) {
        missing.push_back(ofPart(built, landed, "mark for the line side"));
    }
    if (!service.first) {
        const auto joins = joinsMissing(built, service);
        missing.insert(missing.end(), joins.begin(), joins.end());
    }
    return missing;
}

std::optional<Finding> lineSideFinding(const BuiltLayout& built, const Landed& landed) {
    const Service service = serviceAt(built, landed);
    const auto& listing = partOf(built, landed).listing;
    const Edition edition = built.layout.edition;
    if (!service.concerned() ||
        (edition == Edition::nec2017 && listing.kind == ConnectorKind::wireConnector)) {
        return std::nullopt;
    }
    Finding finding = findingAt(built, landed, Rule::lineSideMarking);
    const auto& marked = listing.lineSideOfService;
    if (marked != true) {
        auto missing = markMissing(built, landed, service);
        finding.verdict = unmarked(finding);
        if (!missing.empty()) {
            cannotTell(finding, std::move(missing));
        }
    }
    finding.working = sentence(blockName(built, landed.block) + ": " + serviceText(built, service) +
                               ", and " + markText(marked) + markAsked(edition, listing.kind));
    return finding;
}

// ---- least enclosure ------------------------------------------------------------------------

struct Extent {
    const char* name;
    double asked = 0.0;
    double has = 0.0;
};

/// The side with the least room to spare.
Extent tightestSide(const Vec3& asked, const Vec3& has) {
    const std::array<Extent, 3> sides{
        {{"long", asked.x, has.x}, {"high", asked.y, has.y}, {"deep", asked.z, has.z}}};
    return *std::min_element(sides.begin(), sides.end(), [](const Extent& a, const Extent& b) {
        return a.has - a.asked < b.has - b.asked;
    });
}

void judgeEnclosure(Finding& finding,
                    const BuiltLayout& built,
                    const Landed& landed,
                    const Vec3& least) {
    const Vec3 turned = built.layout.blocks[landed.block].attitude.turnedExtents(least);
    const Extent side = tightestSide(turned, built.gutter().inside);
    judge(finding, inches(side.has), inches(side.asked), Bound::atLeast);
    const auto [has, asked] = inTexts(side.has, side.asked);
    finding.working =
        sentence(blockName(built, landed.block) + ": its part asks for an enclosure of at least " +
                 inText(turned.x) + " by " + inText(turned.y) + " by " + inText(turned.z) +
                 " as turned, and the gutter is " + has + " " + side.name + " inside, where " +
                 asked + " is asked");
}

/// What a part of another kind does not state, it does not ask.
std::optional<Finding> enclosureFinding(const BuiltLayout& built, const Landed& landed) {
    const parts::Part& part = partOf(built, landed);
    const auto& kind = part.listing.kind;
    const bool isBlock = kind == ConnectorKind::distributionBlock;
    if (!part.leastEnclosure && kind == ConnectorKind::wireConnector) {
        return std::nullopt;
    }
    Finding finding =
        findingAt(built, landed, isBlock ? Rule::blocksEnclosure : Rule::listingAndInstructions);
    if (part.leastEnclosure) {
        judgeEnclosure(finding, built, landed, *part.leastEnclosure);
        return finding;
    }
    cannotTell(
        finding,
        {isBlock ? ofPart(built, landed, "least enclosure") : kindMissing(built, landed.block)});
    finding.working =
        sentence(blockName(built, landed.block) + ": " +
                 (isBlock ? "a distribution block states the enclosure it needs, and its part does "
                            "not"
                          : "whether its part is a distribution block, which has to state the "
                            "enclosure it needs, is not stated"));
    return finding;
}

// ---- uninsulated parts ----------------------------------------------------------------------

bool isWireway(const BuiltLayout& built) {
    return built.gutter().article != standards::GutterArticle::auxiliaryGutter;
}

/// Of a distribution block. The rule for boxes is only an analogy in an auxiliary gutter.
void judgeBareBlock(Finding& finding, const BuiltLayout& built, bool insulated, bool live) {
    const Verdict bare = isWireway(built) ? Verdict::breach : Verdict::caution;
    finding.verdict = insulated || !live ? Verdict::meets : bare;
}

std::string bareText(const BuiltLayout& built, const Landed& landed, bool live) {
    const parts::Part& part = partOf(built, landed);
    if (part.insulated) {
        return "a distribution block whose body covers every live part";
    }
    if (part.listing.kind != ConnectorKind::distributionBlock) {
        return "its part is not insulated and has to be covered in the gutter; the layout cannot "
               "say that it is";
    }
    return live ? "a distribution block that leaves live parts uninsulated"
                : "a distribution block without insulation, and no live part: only neutrals land "
                  "in it";
}

/// Grounding conductors alone need no insulation. That a connector is covered on site cannot be
/// seen from the layout.
std::optional<Finding> bareFinding(const BuiltLayout& built, const Landed& landed) {
    const parts::Part& part = partOf(built, landed);
    const bool isBlock = part.listing.kind == ConnectorKind::distributionBlock;
    if ((part.insulated && !isBlock) || !any(built, landed, carriesCurrent)) {
        return std::nullopt;
    }
    const bool live = any(built, landed, isLive);
    Finding finding =
        findingAt(built, landed, isBlock ? Rule::blocksLiveParts : Rule::splicesInsulated);
    if (isBlock) {
        judgeBareBlock(finding, built, part.insulated, live);
    } else {
        cannotTell(finding, {"insulating cover of " + blockName(built, landed.block)});
        if (!part.listing.kind) {
            finding.missing.push_back(kindMissing(built, landed.block));
        }
    }
    finding.working =
        sentence(blockName(built, landed.block) + ": " + bareText(built, landed, live));
    return finding;
}

void addFindings(std::vector<Finding>& findings, const BuiltLayout& built, const Landed& landed) {
    if (any(built, landed, carriesCurrent)) {
        findings.push_back(voltageFinding(built, landed));
    }
    for (auto* question : {faultFinding, lineSideFinding, enclosureFinding, bareFinding}) {
        if (auto finding = question(built, landed)) {
            findings.push_back(std::move(*finding));
        }
    }
}

void ofBlock(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t block) {
    const Landed landed = landedIn(built, facts, block);
    if (!landed.conductors.empty()) {
        addFindings(findings, built, landed);
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::block, reads::kBlocks, ofBlock}});

}  // namespace

std::span<const Section> connectorListingSections() {
    return kSections;
}

std::vector<Finding> checkConnectorListing(const BuiltLayout& built) {
    return runChecks(built, {Check::connectorListing});
}

}  // namespace gw::checks

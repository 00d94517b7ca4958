#include "standards/sections.h"

#include <array>

namespace gw::standards {
namespace {

enum class Articles { any, gutter, metal, nonmetallic, wireways };

/// A section's number in each edition; empty where the edition has no such rule.
struct Number {
    std::string_view in2017;
    std::string_view in2020;
    std::string_view in2023;
    std::string_view in2026;
};

constexpr Number same(std::string_view number) {
    return {number, number, number, number};
}

/// One rule of one article. `inferred`: the 2026 number follows from a shift that was read for its
/// neighbours, or is taken to have stayed; it was not read itself.
struct SectionRow {
    Rule rule;
    Articles articles;
    Number number;
    bool inferred;
    Basis basis;
    std::string_view note = {};
};

constexpr std::string_view kByAnalogy = "written for boxes over 100 cubic inches, here by analogy";
constexpr std::string_view kBlocksOnly = "in 2017 for distribution blocks only";

// Source: NFPA 70, the sections named, in the editions 2017, 2020, 2023 and 2026. Basis as marked:
// seen on a public page quoting at least one of the editions, or from memory. Articles renumbered
// in 2026: 300.x became 300.(x + 2), read for 300.4, 300.5(E), 300.13 and 300.15, inferred for the
// rest.
// clang-format off
constexpr auto kSections = std::to_array<SectionRow>({
    // which article applies
    {Rule::articleDefinition,          Articles::gutter,      {"366.2", "366.2", "Article 100", "Article 100"},              false, Basis::seen},
    {Rule::articleDefinition,          Articles::metal,       {"376.2", "376.2", "Article 100", "Article 100"},              false, Basis::seen},
    {Rule::articleDefinition,          Articles::nonmetallic, {"378.2", "378.2", "Article 100", "Article 100"},              false, Basis::seen},
    {Rule::noSwitchesInside,           Articles::gutter,      same("366.12(1)"),                                             true,  Basis::seen},
    {Rule::gutterLength,               Articles::gutter,      same("366.12(2)"),                                             true,  Basis::seen, "elevators are excused by 620.35"},
    {Rule::environments,               Articles::gutter,      same("366.10"),                                                true,  Basis::seen},
    {Rule::environments,               Articles::metal,       same("376.10, 376.12"),                                        true,  Basis::seen},
    {Rule::environments,               Articles::nonmetallic, same("378.10, 378.12"),                                        true,  Basis::seen},

    // fill
    {Rule::conductorFill,              Articles::gutter,      same("366.22(A)"),                                             true,  Basis::seen},
    {Rule::conductorFill,              Articles::metal,       same("376.22(A)"),                                             true,  Basis::seen},
    {Rule::conductorFill,              Articles::nonmetallic, same("378.22"),                                                true,  Basis::seen},
    {Rule::spliceFill,                 Articles::gutter,      same("366.56(A)"),                                             true,  Basis::seen},
    {Rule::spliceFill,                 Articles::metal,       same("376.56(A)"),                                             true,  Basis::seen},
    {Rule::spliceFill,                 Articles::nonmetallic, same("378.56"),                                                true,  Basis::seen},
    {Rule::adjustmentThreshold,        Articles::gutter,      same("366.23(A)"),                                             true,  Basis::seen},
    {Rule::adjustmentThreshold,        Articles::metal,       same("376.22(B)"),                                             true,  Basis::seen},
    {Rule::adjustmentThreshold,        Articles::nonmetallic, same("378.22"),                                                true,  Basis::seen},
    {Rule::adjustmentFactors,          Articles::any,         {"310.15(B)(3)(a)", "310.15(C)(1)", "310.15(C)(1)", "310.15(C)(1)"}, true,  Basis::seen},
    {Rule::ambientFactors,             Articles::any,         {"310.15(B)(2)", "310.15(B)(1)", "310.15(B)(1)", "310.15(B)(1)"}, true,  Basis::memory},
    {Rule::shortZoneRelief,            Articles::any,         {"310.15(A)(2) Exception", "310.14(A)(2) Exception", "310.14(A)(2) Exception", "310.14(A)(2) Exception"}, true,  Basis::seen},
    {Rule::bareBusCurrent,             Articles::gutter,      same("366.23(A)"),                                             true,  Basis::seen},
    {Rule::largestConductor,           Articles::metal,       same("376.21"),                                                true,  Basis::seen},
    {Rule::largestConductor,           Articles::nonmetallic, same("378.21"),                                                true,  Basis::seen},

    // bending and deflection space
    {Rule::deflectionSpace,            Articles::gutter,      same("366.58(A)"),                                             true,  Basis::seen},
    {Rule::deflectionSpace,            Articles::metal,       same("376.23(A)"),                                             true,  Basis::seen},
    {Rule::deflectionSpace,            Articles::nonmetallic, same("378.23(A)"),                                             true,  Basis::seen},
    {Rule::terminalSpace,              Articles::any,         same("312.6(B)(1)"),                                           true,  Basis::seen},
    {Rule::terminalSpaceOpposite,      Articles::any,         same("312.6(B)(2)"),                                           true,  Basis::seen},
    {Rule::parallelByNumber,           Articles::any,         same("312.6(A)"),                                              true,  Basis::memory},
    {Rule::pullDistances,              Articles::gutter,      same("366.58(B)"),                                             true,  Basis::seen},
    {Rule::pullDistances,              Articles::metal,       same("376.23(B)"),                                             true,  Basis::seen},
    {Rule::pullDistances,              Articles::nonmetallic, same("378.23(B)"),                                             true,  Basis::seen},
    {Rule::boxPullDistances,           Articles::any,         same("314.28(A)"),                                             true,  Basis::seen},
    {Rule::straightPull,               Articles::any,         same("314.28(A)(1)"),                                          true,  Basis::seen},
    {Rule::anglePull,                  Articles::any,         same("314.28(A)(2)"),                                          true,  Basis::seen},
    {Rule::smallerMarkedBox,           Articles::any,         same("314.28(A)(3)"),                                          true,  Basis::memory},
    {Rule::racking,                    Articles::any,         same("314.28(B)"),                                             true,  Basis::seen, "written for boxes; good practice in a gutter"},
    {Rule::bendRadiusOver1000V,        Articles::any,         {"300.34", "300.34", "305.5", "305.5"},                        true,  Basis::memory},

    // splices and taps
    {Rule::splicesAccessible,          Articles::gutter,      same("366.56(A)"),                                             true,  Basis::seen},
    {Rule::splicesAccessible,          Articles::metal,       same("376.56(A)"),                                             true,  Basis::seen},
    {Rule::splicesAccessible,          Articles::nonmetallic, same("378.56"),                                                true,  Basis::seen},
    {Rule::tapsLabelled,               Articles::gutter,      same("366.56(C)"),                                             true,  Basis::memory},
    {Rule::tapsFromBare,               Articles::gutter,      same("366.56(B)"),                                             true,  Basis::memory},
    {Rule::tapsProtected,              Articles::gutter,      same("366.56(D)"),                                             true,  Basis::memory},
    {Rule::tapsProtected,              Articles::metal,       same("240.21"),                                                true,  Basis::memory},
    {Rule::tapsProtected,              Articles::nonmetallic, same("240.21"),                                                true,  Basis::memory},
    {Rule::splicesInsulated,           Articles::any,         same("110.14(B)"),                                             false, Basis::seen},
    {Rule::noSpliceInRaceway,          Articles::any,         {"300.13(A), 300.15", "300.13(A), 300.15", "300.13(A), 300.15", "300.15, 300.17"}, false, Basis::memory},
    {Rule::bareLiveParts,              Articles::gutter,      same("366.100(E)"),                                            true,  Basis::memory, "2 in on one surface seen; the 1 in clearances from memory"},
    {Rule::bareLiveParts,              Articles::metal,       same("376.56(B)(4)"),                                          true,  Basis::memory, "live parts covered"},
    {Rule::construction,               Articles::gutter,      same("366.100"),                                               true,  Basis::seen},
    {Rule::construction,               Articles::metal,       same("376.100"),                                               true,  Basis::memory},
    {Rule::deadEndsClosed,             Articles::metal,       same("376.58"),                                                true,  Basis::memory},
    {Rule::deadEndsClosed,             Articles::nonmetallic, same("378.58"),                                                true,  Basis::memory},
    {Rule::unusedOpenings,             Articles::any,         same("110.12(A)"),                                             true,  Basis::memory},
    {Rule::cabinetSplices,             Articles::any,         same("312.8(A)"),                                              true,  Basis::seen},
    {Rule::handholeSplices,            Articles::any,         same("314.30(C)"),                                             true,  Basis::seen},
    {Rule::tapsJoinWholeSet,           Articles::any,         {"", "300.3(B)(1)", "300.3(B)(1)", "300.5(B)(1)"},             true,  Basis::seen},

    // power distribution blocks
    {Rule::blocksListed,               Articles::gutter,      same("314.28(E)(1)"),                                          true,  Basis::seen, kByAnalogy},
    {Rule::blocksListed,               Articles::metal,       same("376.56(B)(1)"),                                          true,  Basis::seen},
    {Rule::blocksListed,               Articles::nonmetallic, same("110.3(B)"),                                              true,  Basis::memory},
    {Rule::blocksEnclosure,            Articles::gutter,      same("314.28(E)"),                                             true,  Basis::seen, kByAnalogy},
    {Rule::blocksEnclosure,            Articles::metal,       same("376.56(B)(2)"),                                          true,  Basis::seen},
    {Rule::blocksEnclosure,            Articles::nonmetallic, same("110.3(B)"),                                              true,  Basis::memory},
    {Rule::blocksBendingSpace,         Articles::gutter,      same("314.28(E)"),                                             true,  Basis::seen, kByAnalogy},
    {Rule::blocksBendingSpace,         Articles::metal,       same("376.56(B)(3)"),                                          true,  Basis::seen},
    {Rule::blocksBendingSpace,         Articles::nonmetallic, same("110.3(B)"),                                              true,  Basis::memory},
    {Rule::blocksLiveParts,            Articles::gutter,      same("314.28(E)(4)"),                                          true,  Basis::seen, kByAnalogy},
    {Rule::blocksLiveParts,            Articles::metal,       same("376.56(B)(4)"),                                          true,  Basis::memory},
    {Rule::blocksLiveParts,            Articles::nonmetallic, same("110.3(B)"),                                              true,  Basis::memory},
    {Rule::blocksUnobstructed,         Articles::gutter,      same("314.28(E)(5)"),                                          true,  Basis::seen, kByAnalogy},
    {Rule::blocksUnobstructed,         Articles::metal,       same("376.56(B)(5)"),                                          true,  Basis::memory},
    {Rule::blocksUnobstructed,         Articles::nonmetallic, same("110.3(B)"),                                              true,  Basis::memory},
    {Rule::shortCircuitRating,         Articles::any,         same("110.9, 110.10"),                                         true,  Basis::memory},

    // listing, location, marking of connectors
    {Rule::listingAndInstructions,     Articles::any,         same("110.3(B)"),                                              true,  Basis::memory},
    {Rule::lineSideMarking,            Articles::gutter,      {"314.28(E)(1)", "230.46", "230.46", "230.46"},                false, Basis::seen, kBlocksOnly},
    {Rule::lineSideMarking,            Articles::metal,       {"376.56(B)(1)", "230.46", "230.46", "230.46"},                false, Basis::seen, kBlocksOnly},
    {Rule::lineSideMarking,            Articles::nonmetallic, {"", "230.46", "230.46", "230.46"},                            false, Basis::seen},
    {Rule::lineSideListing,            Articles::any,         {"110.3(B)", "230.46", "230.46", "230.2"},                     false, Basis::seen},
    {Rule::directBurial,               Articles::any,         {"300.5(E)", "300.5(E)", "300.5(E)", "300.7(E)"},              false, Basis::seen},
    {Rule::wetRaceway,                 Articles::gutter,      {"300.9", "300.9", "300.9", "300.11"},                         true,  Basis::seen, "an auxiliary gutter is no raceway; the raceways that enter it are"},
    {Rule::wetRaceway,                 Articles::wireways,    {"300.9", "300.9", "300.9", "300.11"},                         true,  Basis::seen},
    {Rule::wetInsulation,              Articles::any,         same("310.10(C)"),                                             true,  Basis::seen},
    {Rule::enclosureType,              Articles::any,         same("110.28"),                                                true,  Basis::memory},
    {Rule::deterioratingAgents,        Articles::any,         same("110.11"),                                                true,  Basis::memory},
    {Rule::racewaySeal,                Articles::any,         {"300.7(A)", "300.7(A)", "300.7(A)", "300.9(A)"},              true,  Basis::seen},
    {Rule::mountingAirSpace,           Articles::any,         same("312.2"),                                                 true,  Basis::seen, "written for cabinets, here by analogy"},

    // terminations
    {Rule::oneConductorPerTerminal,    Articles::any,         same("110.14(A)"),                                             false, Basis::seen},
    {Rule::dissimilarMetals,           Articles::any,         same("110.14"),                                                false, Basis::seen},
    {Rule::fineStranding,              Articles::any,         same("110.14(A)"),                                             false, Basis::seen},
    {Rule::torque,                     Articles::any,         same("110.14(D)"),                                             true,  Basis::seen},
    {Rule::terminalTemperature,        Articles::any,         same("110.14(C)"),                                             true,  Basis::seen},
    {Rule::connectorTemperature,       Articles::any,         same("110.14(C)(2)"),                                          true,  Basis::seen},

    // overcurrent protection of what leaves the trough
    {Rule::tapDefinition,              Articles::any,         {"240.2", "240.2", "Article 100", "Article 100"},              true,  Basis::seen},
    {Rule::taps,                       Articles::any,         same("240.21(B)"),                                             true,  Basis::seen},
    {Rule::tapNoNextSizeUp,            Articles::any,         same("240.21(B)"),                                             true,  Basis::seen},
    {Rule::tapFromTap,                 Articles::any,         same("240.21"),                                                true,  Basis::seen},
    {Rule::tenFootTap,                 Articles::any,         same("240.21(B)(1)"),                                          true,  Basis::seen},
    {Rule::twentyFiveFootTap,          Articles::any,         same("240.21(B)(2)"),                                          true,  Basis::seen},
    {Rule::highBayTap,                 Articles::any,         same("240.21(B)(4)"),                                          true,  Basis::seen},
    {Rule::outsideTap,                 Articles::any,         same("240.21(B)(5)"),                                          true,  Basis::seen},
    {Rule::transformerSecondary,       Articles::any,         same("240.21(C)"),                                             true,  Basis::seen},
    {Rule::supervisedIndustrial,       Articles::any,         same("240.92"),                                                true,  Basis::seen},
    {Rule::nextSizeUp,                 Articles::any,         same("240.4(B)"),                                              true,  Basis::seen},
    {Rule::smallConductors,            Articles::any,         same("240.4(D)"),                                              true,  Basis::memory},
    {Rule::serviceOverload,            Articles::any,         same("230.90(A)"),                                             true,  Basis::memory},
    {Rule::disconnectCount,            Articles::any,         same("230.71"),                                                true,  Basis::seen},
    {Rule::serviceBarriers,            Articles::any,         {"408.3(A)(2)", "230.62(C)", "230.62(C)", "230.62(C)"},        true,  Basis::seen},
    {Rule::serviceConductorsApart,     Articles::gutter,      same("230.7"),                                                 true,  Basis::seen, "binds service raceways: an auxiliary gutter is none, a nipple is"},
    {Rule::serviceConductorsApart,     Articles::wireways,    same("230.7"),                                                 true,  Basis::seen},
    {Rule::arcFlashLabel,              Articles::any,         same("110.16"),                                                true,  Basis::seen},
    {Rule::faultCurrentLabel,          Articles::any,         same("110.24"),                                                true,  Basis::memory},

    // conductors
    {Rule::ampacity,                   Articles::any,         {"Table 310.15(B)(16)", "Table 310.16", "Table 310.16", "Table 310.16"}, true,  Basis::seen},
    {Rule::parallelSize,               Articles::any,         {"310.10(H)(1)", "310.10(G)(1)", "310.10(G)(1)", "310.10(G)(1)"}, true,  Basis::seen},
    {Rule::parallelSameness,           Articles::any,         {"310.10(H)(2)", "310.10(G)(2)", "310.10(G)(2)", "310.10(G)(2)"}, true,  Basis::seen},
    {Rule::neutralCounting,            Articles::any,         {"310.15(B)(5)", "310.15(E)", "310.15(E)", "310.15(E)"},       true,  Basis::memory},
    {Rule::parallelGrouping,           Articles::gutter,      same("366.20"),                                                true,  Basis::seen},
    {Rule::parallelGrouping,           Articles::metal,       same("376.20"),                                                true,  Basis::seen},
    {Rule::parallelGrouping,           Articles::nonmetallic, same("378.20"),                                                true,  Basis::seen},
    {Rule::circuitTogether,            Articles::any,         {"300.3(B)", "300.3(B)", "300.3(B)", "300.5(B)"},              true,  Basis::seen},
    {Rule::induction,                  Articles::any,         {"300.20", "300.20", "300.20", "300.22"},                      true,  Basis::seen},
    {Rule::inductionOpenings,          Articles::any,         {"300.20(B)", "300.20(B)", "300.20(B)", "300.22(B)"},          true,  Basis::seen},
    {Rule::mixedVoltages,              Articles::any,         {"300.3(C)(1)", "300.3(C)(1)", "300.3(C)(1)", "300.5(C)(1)"},  true,  Basis::seen},
    {Rule::racewayFill,                Articles::any,         same("Chapter 9 Table 1"),                                     true,  Basis::seen},
    {Rule::nippleFill,                 Articles::any,         same("Chapter 9 Table 1 note 4"),                              true,  Basis::seen},

    // grounding and bonding
    {Rule::gutterBonded,               Articles::gutter,      same("366.60"),                                                true,  Basis::memory},
    {Rule::gutterBonded,               Articles::metal,       same("376.60"),                                                true,  Basis::memory},
    {Rule::gutterBonded,               Articles::nonmetallic, same("378.60"),                                                true,  Basis::memory},
    {Rule::serviceBonding,             Articles::any,         same("250.92"),                                                true,  Basis::seen},
    {Rule::lineSideJumper,             Articles::any,         same("250.102(C)"),                                            true,  Basis::seen},
    {Rule::loadSideJumper,             Articles::any,         same("250.102(D)"),                                            true,  Basis::memory},
    {Rule::equipmentGrounding,         Articles::any,         same("250.122"),                                               true,  Basis::seen},
    {Rule::equipmentGroundingParallel, Articles::any,         same("250.122(F)"),                                            true,  Basis::seen},
    {Rule::equipmentGroundingTaps,     Articles::any,         same("250.122(G)"),                                            true,  Basis::seen},
    {Rule::mainBondingJumper,          Articles::any,         same("250.28(D)"),                                             true,  Basis::seen},
    {Rule::groundedConductor,          Articles::any,         {"250.24(C)", "250.24(C)", "250.24(D)", "250.24(D)"},          true,  Basis::memory},
    {Rule::neutralBondedLineSide,      Articles::any,         same("250.142(A)"),                                            true,  Basis::seen},
    {Rule::neutralNotLoadSide,         Articles::any,         same("250.142(B)"),                                            true,  Basis::seen},
    {Rule::bondingOver250V,            Articles::any,         same("250.97"),                                                true,  Basis::seen},
    {Rule::groundingSplices,           Articles::any,         same("250.148"),                                               true,  Basis::memory},
    {Rule::groundingElectrode,         Articles::any,         same("250.66"),                                                true,  Basis::seen},

    // entries and mechanical protection
    {Rule::insulatingBushing,          Articles::any,         {"300.4(G)", "300.4(G)", "300.4(G)", "300.6(G)"},              true,  Basis::seen},
    {Rule::support,                    Articles::gutter,      same("366.30"),                                                true,  Basis::seen},
    {Rule::support,                    Articles::metal,       same("376.30"),                                                true,  Basis::memory},
    {Rule::support,                    Articles::nonmetallic, same("378.30"),                                                true,  Basis::seen},
    {Rule::expansion,                  Articles::gutter,      same("366.44"),                                                true,  Basis::seen, "nonmetallic gutters"},
    {Rule::expansion,                  Articles::nonmetallic, same("378.44"),                                                true,  Basis::seen},
    {Rule::verticalSupport,            Articles::any,         {"300.19", "300.19", "300.19", "300.21"},                      true,  Basis::memory},
    {Rule::extensions,                 Articles::metal,       same("376.70"),                                                true,  Basis::memory},
    {Rule::extensions,                 Articles::nonmetallic, same("378.70"),                                                true,  Basis::memory},
    {Rule::fastening,                  Articles::any,         same("110.13"),                                                true,  Basis::memory},

    // space in front and access
    {Rule::workingSpace,               Articles::any,         same("110.26(A)"),                                             true,  Basis::seen},
    {Rule::protrusion,                 Articles::any,         same("110.26(A)(3)"),                                          true,  Basis::seen},
    {Rule::dedicatedSpace,             Articles::any,         same("110.26(E)"),                                             true,  Basis::memory},
    {Rule::coverFastened,              Articles::gutter,      same("366.100(D)"),                                            true,  Basis::memory},
    {Rule::disconnectAccess,           Articles::any,         same("230.70, 240.24"),                                        true,  Basis::memory},

    // identification
    {Rule::groundedIdentification,     Articles::any,         same("200.6"),                                                 true,  Basis::memory},
    {Rule::groundedBySystem,           Articles::any,         same("200.6(D)"),                                              true,  Basis::memory},
    {Rule::groundingIdentification,    Articles::any,         same("250.119"),                                               true,  Basis::memory},
    {Rule::ungroundedIdentification,   Articles::any,         {"310.110", "310.6", "310.6", "310.6"},                        true,  Basis::memory},
    {Rule::highLeg,                    Articles::any,         same("110.15"),                                                true,  Basis::seen},
    {Rule::phaseOrder,                 Articles::any,         same("408.3(E)"),                                              true,  Basis::seen},
    {Rule::fieldMarking,               Articles::any,         same("110.21(B), 110.22"),                                     true,  Basis::memory},
});
// clang-format on

constexpr std::size_t kRuleCount = static_cast<std::size_t>(Rule::fieldMarking) + 1;

bool fits(Articles articles, GutterArticle article) {
    switch (articles) {
        case Articles::any:
            return true;
        case Articles::gutter:
            return article == GutterArticle::auxiliaryGutter;
        case Articles::metal:
            return article == GutterArticle::metalWireway;
        case Articles::nonmetallic:
            return article == GutterArticle::nonmetallicWireway;
        case Articles::wireways:
            return article != GutterArticle::auxiliaryGutter;
    }
    return false;
}

std::string_view numberIn(const Number& number, Edition edition) {
    switch (edition) {
        case Edition::nec2017:
            return number.in2017;
        case Edition::nec2020:
            return number.in2020;
        case Edition::nec2023:
            return number.in2023;
        case Edition::nec2026:
            return number.in2026;
    }
    return {};
}

std::string noteOf(const SectionRow& row, Edition edition) {
    std::string note(row.note);
    if (edition == Edition::nec2026 && row.inferred) {
        note += note.empty() ? "" : "; ";
        note += "2026 number inferred";
    }
    return note;
}

Citation unwritten(Edition edition, GutterArticle article) {
    std::string note = "no section of NFPA 70-";
    note += editionText(edition);
    note += article == GutterArticle::auxiliaryGutter ? " recorded for an " : " recorded for a ";
    note += articleText(article);
    return {{}, {}, Basis::commonPractice, note};
}

}  // namespace

Citation section(Rule rule, Edition edition, GutterArticle article) {
    for (const SectionRow& row : kSections) {
        if (row.rule != rule || !fits(row.articles, article)) {
            continue;
        }
        const std::string_view number = numberIn(row.number, edition);
        if (!number.empty()) {
            return necCitation(edition, std::string(number), row.basis, noteOf(row, edition));
        }
    }
    return unwritten(edition, article);
}

std::span<const Rule> allRules() {
    static constexpr auto kRules = [] {
        std::array<Rule, kRuleCount> rules{};
        for (std::size_t i = 0; i < kRuleCount; ++i) {
            rules[i] = static_cast<Rule>(i);
        }
        return rules;
    }();
    return kRules;
}

}  // namespace gw::standards

#include "standards/sections.h"

#include <array>

#include "base/contract.h"

namespace gw::standards {
namespace {

enum class Articles { any, gutter, metal, nonmetallic };

/// One rule of one article. `inferred`: the 2026 number follows from a shift that was read for its
/// neighbours, or is taken to have stayed; it was not read itself.
struct SectionRow {
    Rule rule;
    Articles articles;
    std::string_view in2017;
    std::string_view in2020;
    std::string_view in2023;
    std::string_view in2026;
    bool inferred;
    Basis basis;
};

// Source: NFPA 70, the sections named, in the editions 2017, 2020, 2023 and 2026. Basis as marked:
// seen on a public page quoting at least one of the editions, or from memory.
// clang-format off
constexpr std::array<SectionRow, 86> kSections = {{
    {Rule::articleDefinition       , Articles::gutter     , "366.2"        , "366.2"        , "Article 100"  , "Article 100"  , false, Basis::seen},
    {Rule::articleDefinition       , Articles::metal      , "376.2"        , "376.2"        , "Article 100"  , "Article 100"  , false, Basis::seen},
    {Rule::articleDefinition       , Articles::nonmetallic, "378.2"        , "378.2"        , "Article 100"  , "Article 100"  , false, Basis::seen},
    {Rule::noSwitchesInside        , Articles::any        , "366.12(1)"    , "366.12(1)"    , "366.12(1)"    , "366.12(1)"    , true , Basis::seen},
    {Rule::gutterLength            , Articles::any        , "366.12(2)"    , "366.12(2)"    , "366.12(2)"    , "366.12(2)"    , true , Basis::seen},
    {Rule::environments            , Articles::gutter     , "366.10"       , "366.10"       , "366.10"       , "366.10"       , true , Basis::seen},
    {Rule::environments            , Articles::metal      , "376.10"       , "376.10"       , "376.10"       , "376.10"       , true , Basis::seen},
    {Rule::environments            , Articles::nonmetallic, "378.10"       , "378.10"       , "378.10"       , "378.10"       , true , Basis::seen},
    {Rule::conductorFill           , Articles::gutter     , "366.22(A)"    , "366.22(A)"    , "366.22(A)"    , "366.22(A)"    , true , Basis::seen},
    {Rule::conductorFill           , Articles::metal      , "376.22(A)"    , "376.22(A)"    , "376.22(A)"    , "376.22(A)"    , true , Basis::seen},
    {Rule::conductorFill           , Articles::nonmetallic, "378.22"       , "378.22"       , "378.22"       , "378.22"       , true , Basis::seen},
    {Rule::spliceFill              , Articles::gutter     , "366.56(A)"    , "366.56(A)"    , "366.56(A)"    , "366.56(A)"    , true , Basis::seen},
    {Rule::spliceFill              , Articles::metal      , "376.56(A)"    , "376.56(A)"    , "376.56(A)"    , "376.56(A)"    , true , Basis::seen},
    {Rule::spliceFill              , Articles::nonmetallic, "378.56"       , "378.56"       , "378.56"       , "378.56"       , true , Basis::seen},
    {Rule::adjustmentThreshold     , Articles::gutter     , "366.23(A)"    , "366.23(A)"    , "366.23(A)"    , "366.23(A)"    , true , Basis::seen},
    {Rule::adjustmentThreshold     , Articles::metal      , "376.22(B)"    , "376.22(B)"    , "376.22(B)"    , "376.22(B)"    , true , Basis::seen},
    {Rule::adjustmentThreshold     , Articles::nonmetallic, "378.22"       , "378.22"       , "378.22"       , "378.22"       , true , Basis::seen},
    {Rule::largestConductor        , Articles::gutter     , "366.22"       , "366.22"       , "366.22"       , "366.22"       , true , Basis::seen},
    {Rule::largestConductor        , Articles::metal      , "376.21"       , "376.21"       , "376.21"       , "376.21"       , true , Basis::seen},
    {Rule::largestConductor        , Articles::nonmetallic, "378.21"       , "378.21"       , "378.21"       , "378.21"       , true , Basis::seen},
    {Rule::deflectionSpace         , Articles::gutter     , "366.58(A)"    , "366.58(A)"    , "366.58(A)"    , "366.58(A)"    , true , Basis::seen},
    {Rule::deflectionSpace         , Articles::metal      , "376.23(A)"    , "376.23(A)"    , "376.23(A)"    , "376.23(A)"    , true , Basis::seen},
    {Rule::deflectionSpace         , Articles::nonmetallic, "378.23(A)"    , "378.23(A)"    , "378.23(A)"    , "378.23(A)"    , true , Basis::seen},
    {Rule::terminalSpace           , Articles::any        , "312.6(B)(1)"  , "312.6(B)(1)"  , "312.6(B)(1)"  , "312.6(B)(1)"  , true , Basis::seen},
    {Rule::terminalSpaceOpposite   , Articles::any        , "312.6(B)(2)"  , "312.6(B)(2)"  , "312.6(B)(2)"  , "312.6(B)(2)"  , true , Basis::seen},
    {Rule::pullDistances           , Articles::gutter     , "366.58(B)"    , "366.58(B)"    , "366.58(B)"    , "366.58(B)"    , true , Basis::seen},
    {Rule::pullDistances           , Articles::metal      , "376.23(B)"    , "376.23(B)"    , "376.23(B)"    , "376.23(B)"    , true , Basis::seen},
    {Rule::pullDistances           , Articles::nonmetallic, "378.23(B)"    , "378.23(B)"    , "378.23(B)"    , "378.23(B)"    , true , Basis::seen},
    {Rule::boxPullDistances        , Articles::any        , "314.28(A)"    , "314.28(A)"    , "314.28(A)"    , "314.28(A)"    , true , Basis::seen},
    {Rule::splicesAccessible       , Articles::gutter     , "366.56(A)"    , "366.56(A)"    , "366.56(A)"    , "366.56(A)"    , true , Basis::seen},
    {Rule::splicesAccessible       , Articles::metal      , "376.56(A)"    , "376.56(A)"    , "376.56(A)"    , "376.56(A)"    , true , Basis::seen},
    {Rule::splicesAccessible       , Articles::nonmetallic, "378.56"       , "378.56"       , "378.56"       , "378.56"       , true , Basis::seen},
    {Rule::tapsLabelled            , Articles::any        , "366.56(C)"    , "366.56(C)"    , "366.56(C)"    , "366.56(C)"    , true , Basis::memory},
    {Rule::tapsProtected           , Articles::any        , "366.56(D)"    , "366.56(D)"    , "366.56(D)"    , "366.56(D)"    , true , Basis::memory},
    {Rule::splicesInsulated        , Articles::any        , "110.14(B)"    , "110.14(B)"    , "110.14(B)"    , "110.14(B)"    , false, Basis::seen},
    {Rule::bareLiveParts           , Articles::any        , "366.100(E)"   , "366.100(E)"   , "366.100(E)"   , "366.100(E)"   , true , Basis::seen},
    {Rule::tapsJoinWholeSet        , Articles::any        , ""             , "300.3(B)(1)"  , "300.3(B)(1)"  , "300.5(B)(1)"  , true , Basis::seen},
    {Rule::blocksListed            , Articles::any        , "376.56(B)(1)" , "376.56(B)(1)" , "376.56(B)(1)" , "376.56(B)(1)" , true , Basis::seen},
    {Rule::blocksEnclosure         , Articles::any        , "376.56(B)(2)" , "376.56(B)(2)" , "376.56(B)(2)" , "376.56(B)(2)" , true , Basis::seen},
    {Rule::blocksBendingSpace      , Articles::any        , "376.56(B)(3)" , "376.56(B)(3)" , "376.56(B)(3)" , "376.56(B)(3)" , true , Basis::seen},
    {Rule::blocksLiveParts         , Articles::any        , "376.56(B)(4)" , "376.56(B)(4)" , "376.56(B)(4)" , "376.56(B)(4)" , true , Basis::seen},
    {Rule::blocksUnobstructed      , Articles::any        , "376.56(B)(5)" , "376.56(B)(5)" , "376.56(B)(5)" , "376.56(B)(5)" , true , Basis::seen},
    {Rule::shortCircuitRating      , Articles::any        , "110.9, 110.10", "110.9, 110.10", "110.9, 110.10", "110.9, 110.10", true , Basis::memory},
    {Rule::listingAndInstructions  , Articles::any        , "110.3(B)"     , "110.3(B)"     , "110.3(B)"     , "110.3(B)"     , true , Basis::memory},
    {Rule::lineSideMarking         , Articles::any        , "376.56(B)(1)" , "230.46"       , "230.46"       , "230.46"       , false, Basis::seen},
    {Rule::directBurial            , Articles::any        , "300.5(E)"     , "300.5(E)"     , "300.5(E)"     , "300.7(E)"     , false, Basis::seen},
    {Rule::wetRaceway              , Articles::any        , "300.9"        , "300.9"        , "300.9"        , "300.11"       , true , Basis::seen},
    {Rule::wetInsulation           , Articles::any        , "310.10(C)"    , "310.10(C)"    , "310.10(C)"    , "310.10(C)"    , true , Basis::seen},
    {Rule::enclosureType           , Articles::any        , "110.28"       , "110.28"       , "110.28"       , "110.28"       , true , Basis::memory},
    {Rule::oneConductorPerTerminal , Articles::any        , "110.14(A)"    , "110.14(A)"    , "110.14(A)"    , "110.14(A)"    , false, Basis::seen},
    {Rule::dissimilarMetals        , Articles::any        , "110.14"       , "110.14"       , "110.14"       , "110.14"       , false, Basis::seen},
    {Rule::torque                  , Articles::any        , "110.14(D)"    , "110.14(D)"    , "110.14(D)"    , "110.14(D)"    , true , Basis::seen},
    {Rule::terminalTemperature     , Articles::any        , "110.14(C)"    , "110.14(C)"    , "110.14(C)"    , "110.14(C)"    , true , Basis::seen},
    {Rule::taps                    , Articles::any        , "240.21(B)"    , "240.21(B)"    , "240.21(B)"    , "240.21(B)"    , true , Basis::seen},
    {Rule::tenFootTap              , Articles::any        , "240.21(B)(1)" , "240.21(B)(1)" , "240.21(B)(1)" , "240.21(B)(1)" , true , Basis::seen},
    {Rule::twentyFiveFootTap       , Articles::any        , "240.21(B)(2)" , "240.21(B)(2)" , "240.21(B)(2)" , "240.21(B)(2)" , true , Basis::seen},
    {Rule::highBayTap              , Articles::any        , "240.21(B)(4)" , "240.21(B)(4)" , "240.21(B)(4)" , "240.21(B)(4)" , true , Basis::seen},
    {Rule::outsideTap              , Articles::any        , "240.21(B)(5)" , "240.21(B)(5)" , "240.21(B)(5)" , "240.21(B)(5)" , true , Basis::seen},
    {Rule::serviceOverload         , Articles::any        , "230.90(A)"    , "230.90(A)"    , "230.90(A)"    , "230.90(A)"    , true , Basis::memory},
    {Rule::disconnectCount         , Articles::any        , "230.71"       , "230.71"       , "230.71"       , "230.71"       , true , Basis::seen},
    {Rule::serviceConductorsApart  , Articles::any        , "230.7"        , "230.7"        , "230.7"        , "230.7"        , true , Basis::seen},
    {Rule::parallelSize            , Articles::any        , "310.10(H)(1)" , "310.10(G)(1)" , "310.10(G)(1)" , "310.10(G)(1)" , true , Basis::seen},
    {Rule::parallelSameness        , Articles::any        , "310.10(H)(2)" , "310.10(G)(2)" , "310.10(G)(2)" , "310.10(G)(2)" , true , Basis::seen},
    {Rule::neutralCounting         , Articles::any        , "310.15(B)(5)" , "310.15(E)"    , "310.15(E)"    , "310.15(E)"    , true , Basis::memory},
    {Rule::parallelGrouping        , Articles::gutter     , "366.20"       , "366.20"       , "366.20"       , "366.20"       , true , Basis::seen},
    {Rule::parallelGrouping        , Articles::metal      , "376.20"       , "376.20"       , "376.20"       , "376.20"       , true , Basis::seen},
    {Rule::parallelGrouping        , Articles::nonmetallic, "378.20"       , "378.20"       , "378.20"       , "378.20"       , true , Basis::seen},
    {Rule::circuitTogether         , Articles::any        , "300.3(B)"     , "300.3(B)"     , "300.3(B)"     , "300.5(B)"     , true , Basis::seen},
    {Rule::induction               , Articles::any        , "300.20"       , "300.20"       , "300.20"       , "300.22"       , true , Basis::seen},
    {Rule::mixedVoltages           , Articles::any        , "300.3(C)(1)"  , "300.3(C)(1)"  , "300.3(C)(1)"  , "300.5(C)(1)"  , true , Basis::seen},
    {Rule::gutterBonded            , Articles::gutter     , "366.60"       , "366.60"       , "366.60"       , "366.60"       , true , Basis::memory},
    {Rule::gutterBonded            , Articles::metal      , "376.60"       , "376.60"       , "376.60"       , "376.60"       , true , Basis::memory},
    {Rule::gutterBonded            , Articles::nonmetallic, "378.60"       , "378.60"       , "378.60"       , "378.60"       , true , Basis::memory},
    {Rule::serviceBonding          , Articles::any        , "250.92"       , "250.92"       , "250.92"       , "250.92"       , true , Basis::seen},
    {Rule::lineSideJumper          , Articles::any        , "250.102(C)"   , "250.102(C)"   , "250.102(C)"   , "250.102(C)"   , true , Basis::seen},
    {Rule::equipmentGrounding      , Articles::any        , "250.122"      , "250.122"      , "250.122"      , "250.122"      , true , Basis::seen},
    {Rule::groundedConductor       , Articles::any        , "250.24(C)"    , "250.24(C)"    , "250.24(D)"    , "250.24(D)"    , true , Basis::memory},
    {Rule::insulatingBushing       , Articles::any        , "300.4(G)"     , "300.4(G)"     , "300.4(G)"     , "300.6(G)"     , true , Basis::seen},
    {Rule::support                 , Articles::gutter     , "366.30"       , "366.30"       , "366.30"       , "366.30"       , true , Basis::seen},
    {Rule::support                 , Articles::metal      , "376.30"       , "376.30"       , "376.30"       , "376.30"       , true , Basis::seen},
    {Rule::support                 , Articles::nonmetallic, "378.30"       , "378.30"       , "378.30"       , "378.30"       , true , Basis::seen},
    {Rule::workingSpace            , Articles::any        , "110.26(A)"    , "110.26(A)"    , "110.26(A)"    , "110.26(A)"    , true , Basis::seen},
    {Rule::groundedIdentification  , Articles::any        , "200.6"        , "200.6"        , "200.6"        , "200.6"        , true , Basis::memory},
    {Rule::groundingIdentification , Articles::any        , "250.119"      , "250.119"      , "250.119"      , "250.119"      , true , Basis::memory},
    {Rule::ungroundedIdentification, Articles::any        , "310.110"      , "310.6"        , "310.6"        , "310.6"        , true , Basis::memory},
    {Rule::highLeg                 , Articles::any        , "110.15"       , "110.15"       , "110.15"       , "110.15"       , true , Basis::seen},
}};
// clang-format on

constexpr std::array<Rule, 62> kRules = {
    Rule::articleDefinition,
    Rule::noSwitchesInside,
    Rule::gutterLength,
    Rule::environments,
    Rule::conductorFill,
    Rule::spliceFill,
    Rule::adjustmentThreshold,
    Rule::largestConductor,
    Rule::deflectionSpace,
    Rule::terminalSpace,
    Rule::terminalSpaceOpposite,
    Rule::pullDistances,
    Rule::boxPullDistances,
    Rule::splicesAccessible,
    Rule::tapsLabelled,
    Rule::tapsProtected,
    Rule::splicesInsulated,
    Rule::bareLiveParts,
    Rule::tapsJoinWholeSet,
    Rule::blocksListed,
    Rule::blocksEnclosure,
    Rule::blocksBendingSpace,
    Rule::blocksLiveParts,
    Rule::blocksUnobstructed,
    Rule::shortCircuitRating,
    Rule::listingAndInstructions,
    Rule::lineSideMarking,
    Rule::directBurial,
    Rule::wetRaceway,
    Rule::wetInsulation,
    Rule::enclosureType,
    Rule::oneConductorPerTerminal,
    Rule::dissimilarMetals,
    Rule::torque,
    Rule::terminalTemperature,
    Rule::taps,
    Rule::tenFootTap,
    Rule::twentyFiveFootTap,
    Rule::highBayTap,
    Rule::outsideTap,
    Rule::serviceOverload,
    Rule::disconnectCount,
    Rule::serviceConductorsApart,
    Rule::parallelSize,
    Rule::parallelSameness,
    Rule::neutralCounting,
    Rule::parallelGrouping,
    Rule::circuitTogether,
    Rule::induction,
    Rule::mixedVoltages,
    Rule::gutterBonded,
    Rule::serviceBonding,
    Rule::lineSideJumper,
    Rule::equipmentGrounding,
    Rule::groundedConductor,
    Rule::insulatingBushing,
    Rule::support,
    Rule::workingSpace,
    Rule::groundedIdentification,
    Rule::groundingIdentification,
    Rule::ungroundedIdentification,
    Rule::highLeg,
};

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
    }
    return false;
}

std::string_view numberIn(const SectionRow& row, Edition edition) {
    switch (edition) {
        case Edition::nec2017:
            return row.in2017;
        case Edition::nec2020:
            return row.in2020;
        case Edition::nec2023:
            return row.in2023;
        case Edition::nec2026:
            return row.in2026;
    }
    return {};
}

}  // namespace

Citation section(Rule rule, Edition edition, GutterArticle article) {
    for (const auto& row : kSections) {
        if (row.rule != rule || !fits(row.articles, article)) {
            continue;
        }
        const auto number = numberIn(row, edition);
        const bool inferred = edition == Edition::nec2026 && row.inferred;
        const char* note = number.empty() ? "not written in this edition; good practice"
                           : inferred     ? "2026 number inferred"
                                          : "";
        return necCitation(edition, std::string(number), row.basis, note);
    }
    CONTRACT(false);
}

std::span<const Rule> allRules() {
    return kRules;
}

}  // namespace gw::standards

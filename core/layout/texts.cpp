#include <array>

#include "layout/layout.h"

namespace gw::layout {
namespace {

constexpr std::array kMaterials = {GutterMaterial::steel,
                                   GutterMaterial::stainlessSteel,
                                   GutterMaterial::aluminium,
                                   GutterMaterial::nonmetallic};
constexpr std::array kOrientations = {Orientation::horizontal, Orientation::vertical};
constexpr std::array kPhases = {Phase::a, Phase::b, Phase::c, Phase::n, Phase::g};
constexpr std::array kRoles = {Role::service, Role::feeder, Role::tap, Role::branch, Role::bonding};
constexpr std::array kTapRules = {TapRule::none,
                                  TapRule::tenFoot,
                                  TapRule::twentyFiveFoot,
                                  TapRule::highBay,
                                  TapRule::outside,
                                  TapRule::serviceConductors};
constexpr std::array kWalls = {Wall::left, Wall::right, Wall::top, Wall::bottom, Wall::back};
constexpr std::array kBondedBy = {BondedBy::standardLocknuts,
                                  BondedBy::threadedHub,
                                  BondedBy::threadlessFitting,
                                  BondedBy::bondingLocknut,
                                  BondedBy::bushingAndJumper,
                                  BondedBy::groundedConductor};
constexpr std::array kFillAtSplice = {Readings::FillAtSplice::twentyStillBinds,
                                      Readings::FillAtSplice::seventyFiveReplaces};
constexpr std::array kTerminalSpace = {Readings::TerminalSpace::asForBlocks,
                                       Readings::TerminalSpace::gutterWidthOnly};
constexpr std::array kInsideWeatherproof = {Readings::InsideWeatherproof::wet,
                                            Readings::InsideWeatherproof::notWet};

// The value whose text it is.
template <class T>
std::optional<T> valueOf(std::string_view text,
                         std::span<const T> all,
                         std::string_view (*textOf)(T)) {
    for (const T value : all) {
        if (textOf(value) == text) {
            return value;
        }
    }
    return std::nullopt;
}

}  // namespace

std::string_view materialText(GutterMaterial material) {
    switch (material) {
        case GutterMaterial::steel:
            return "steel";
        case GutterMaterial::stainlessSteel:
            return "stainless steel";
        case GutterMaterial::aluminium:
            return "aluminium";
        case GutterMaterial::nonmetallic:
            return "nonmetallic";
    }
    return {};
}

std::string_view orientationText(Orientation orientation) {
    switch (orientation) {
        case Orientation::horizontal:
            return "horizontal";
        case Orientation::vertical:
            return "vertical";
    }
    return {};
}

std::string_view phaseText(Phase phase) {
    switch (phase) {
        case Phase::a:
            return "A";
        case Phase::b:
            return "B";
        case Phase::c:
            return "C";
        case Phase::n:
            return "N";
        case Phase::g:
            return "G";
    }
    return {};
}

std::string_view roleText(Role role) {
    switch (role) {
        case Role::service:
            return "service";
        case Role::feeder:
            return "feeder";
        case Role::tap:
            return "tap";
        case Role::branch:
            return "branch";
        case Role::bonding:
            return "bonding";
    }
    return {};
}

std::string_view tapRuleText(TapRule rule) {
    switch (rule) {
        case TapRule::none:
            return "none";
        case TapRule::tenFoot:
            return "10 ft";
        case TapRule::twentyFiveFoot:
            return "25 ft";
        case TapRule::highBay:
            return "high bay";
        case TapRule::outside:
            return "outside";
        case TapRule::serviceConductors:
            return "service conductors";
    }
    return {};
}

std::string_view wallText(Wall wall) {
    switch (wall) {
        case Wall::left:
            return "left";
        case Wall::right:
            return "right";
        case Wall::top:
            return "top";
        case Wall::bottom:
            return "bottom";
        case Wall::back:
            return "back";
    }
    return {};
}

std::string_view bondedByText(BondedBy means) {
    switch (means) {
        case BondedBy::standardLocknuts:
            return "standard locknuts";
        case BondedBy::threadedHub:
            return "threaded hub";
        case BondedBy::threadlessFitting:
            return "threadless fitting";
        case BondedBy::bondingLocknut:
            return "bonding locknut";
        case BondedBy::bushingAndJumper:
            return "bushing and jumper";
        case BondedBy::groundedConductor:
            return "grounded conductor";
    }
    return {};
}

std::string_view fillAtSpliceText(Readings::FillAtSplice reading) {
    switch (reading) {
        case Readings::FillAtSplice::twentyStillBinds:
            return "20 % still binds";
        case Readings::FillAtSplice::seventyFiveReplaces:
            return "75 % takes its place";
    }
    return {};
}

std::string_view terminalSpaceText(Readings::TerminalSpace reading) {
    switch (reading) {
        case Readings::TerminalSpace::asForBlocks:
            return "as for distribution blocks";
        case Readings::TerminalSpace::gutterWidthOnly:
            return "gutter width only";
    }
    return {};
}

std::string_view insideWeatherproofText(Readings::InsideWeatherproof reading) {
    switch (reading) {
        case Readings::InsideWeatherproof::wet:
            return "wet";
        case Readings::InsideWeatherproof::notWet:
            return "not wet";
    }
    return {};
}

std::span<const GutterMaterial> allMaterials() {
    return kMaterials;
}
std::span<const Orientation> allOrientations() {
    return kOrientations;
}
std::span<const Phase> allPhases() {
    return kPhases;
}
std::span<const Role> allRoles() {
    return kRoles;
}
std::span<const TapRule> allTapRules() {
    return kTapRules;
}
std::span<const Wall> allWalls() {
    return kWalls;
}
std::span<const BondedBy> allBondedBy() {
    return kBondedBy;
}
std::span<const Readings::FillAtSplice> allFillAtSpliceReadings() {
    return kFillAtSplice;
}
std::span<const Readings::TerminalSpace> allTerminalSpaceReadings() {
    return kTerminalSpace;
}
std::span<const Readings::InsideWeatherproof> allInsideWeatherproofReadings() {
    return kInsideWeatherproof;
}

std::optional<GutterMaterial> materialFromText(std::string_view text) {
    return valueOf(text, allMaterials(), materialText);
}
std::optional<Orientation> orientationFromText(std::string_view text) {
    return valueOf(text, allOrientations(), orientationText);
}
std::optional<Phase> phaseFromText(std::string_view text) {
    return valueOf(text, allPhases(), phaseText);
}
std::optional<Role> roleFromText(std::string_view text) {
    return valueOf(text, allRoles(), roleText);
}
std::optional<TapRule> tapRuleFromText(std::string_view text) {
    return valueOf(text, allTapRules(), tapRuleText);
}
std::optional<Wall> wallFromText(std::string_view text) {
    return valueOf(text, allWalls(), wallText);
}

std::optional<BondedBy> bondedByFromText(std::string_view text) {
    return valueOf(text, allBondedBy(), bondedByText);
}
std::optional<Readings::FillAtSplice> fillAtSpliceFromText(std::string_view text) {
    return valueOf(text, allFillAtSpliceReadings(), fillAtSpliceText);
}
std::optional<Readings::TerminalSpace> terminalSpaceFromText(std::string_view text) {
    return valueOf(text, allTerminalSpaceReadings(), terminalSpaceText);
}
std::optional<Readings::InsideWeatherproof> insideWeatherproofFromText(std::string_view text) {
    return valueOf(text, allInsideWeatherproofReadings(), insideWeatherproofText);
}

}  // namespace gw::layout

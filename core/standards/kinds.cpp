#include "standards/kinds.h"

#include <array>

#include "base/contract.h"

namespace gw::standards {
namespace {

template <class T>
struct Named {
    T kind;
    std::string_view text;
};

template <class T, std::size_t n>
constexpr std::array<T, n> kindsOf(const std::array<Named<T>, n>& named) {
    std::array<T, n> kinds{};
    for (std::size_t i = 0; i < n; ++i) {
        kinds[i] = named[i].kind;
    }
    return kinds;
}

template <class T, std::size_t n>
std::string_view textOf(const std::array<Named<T>, n>& named, T kind) {
    for (const auto& candidate : named) {
        if (candidate.kind == kind) {
            return candidate.text;
        }
    }
    CONTRACT(false);
}

constexpr std::array<Named<Metal>, 3> kMetalsNamed = {{
    {Metal::copper, "copper"},
    {Metal::aluminium, "aluminium"},
    {Metal::copperCladAluminium, "copper-clad aluminium"},
}};
constexpr auto kMetals = kindsOf(kMetalsNamed);

constexpr std::array<Named<Insulation>, 17> kInsulationsNamed = {{
    {Insulation::thhn, "THHN"},
    {Insulation::thwn, "THWN"},
    {Insulation::thwn2, "THWN-2"},
    {Insulation::xhhw, "XHHW"},
    {Insulation::xhhw2, "XHHW-2"},
    {Insulation::xhh, "XHH"},
    {Insulation::tw, "TW"},
    {Insulation::thw, "THW"},
    {Insulation::thhw, "THHW"},
    {Insulation::thw2, "THW-2"},
    {Insulation::rhh, "RHH"},
    {Insulation::rhw, "RHW"},
    {Insulation::rhw2, "RHW-2"},
    {Insulation::rhhNoCover, "RHH without covering"},
    {Insulation::rhwNoCover, "RHW without covering"},
    {Insulation::rhw2NoCover, "RHW-2 without covering"},
    {Insulation::bare, "bare"},
}};
constexpr auto kInsulations = kindsOf(kInsulationsNamed);

constexpr std::array<Named<Stranding>, 9> kStrandingsNamed = {{
    {Stranding::solid, "solid"},
    {Stranding::classB, "B"},
    {Stranding::classC, "C"},
    {Stranding::compact, "compact"},
    {Stranding::classG, "G"},
    {Stranding::classH, "H"},
    {Stranding::classI, "I"},
    {Stranding::classK, "K"},
    {Stranding::classM, "M"},
}};
constexpr auto kStrandings = kindsOf(kStrandingsNamed);

constexpr std::array<Named<RacewayType>, 4> kRacewaysNamed = {{
    {RacewayType::emt, "EMT"},
    {RacewayType::rmc, "RMC"},
    {RacewayType::pvc40, "PVC-40"},
    {RacewayType::fmc, "FMC"},
}};
constexpr auto kRaceways = kindsOf(kRacewaysNamed);

constexpr std::array<Named<GutterArticle>, 3> kArticlesNamed = {{
    {GutterArticle::auxiliaryGutter, "auxiliary gutter"},
    {GutterArticle::metalWireway, "metal wireway"},
    {GutterArticle::nonmetallicWireway, "nonmetallic wireway"},
}};
constexpr auto kArticles = kindsOf(kArticlesNamed);

constexpr std::array<Named<Location>, 4> kLocationsNamed = {{
    {Location::dry, "dry"},
    {Location::damp, "damp"},
    {Location::wet, "wet"},
    {Location::buried, "buried"},
}};
constexpr auto kLocations = kindsOf(kLocationsNamed);

template <class T, std::size_t n>
std::optional<T> kindOf(const std::array<Named<T>, n>& named, std::string_view text) {
    for (const auto& candidate : named) {
        if (candidate.text == text) {
            return candidate.kind;
        }
    }
    return std::nullopt;
}

}  // namespace

bool isFine(Stranding stranding) {
    switch (stranding) {
        case Stranding::solid:
        case Stranding::classB:
        case Stranding::classC:
        case Stranding::compact:
            return false;
        case Stranding::classG:
        case Stranding::classH:
        case Stranding::classI:
        case Stranding::classK:
        case Stranding::classM:
            return true;
    }
    return true;
}

std::string_view metalText(Metal metal) {
    return textOf(kMetalsNamed, metal);
}
std::string_view insulationText(Insulation insulation) {
    return textOf(kInsulationsNamed, insulation);
}
std::string_view strandingText(Stranding stranding) {
    return textOf(kStrandingsNamed, stranding);
}
std::string_view racewayText(RacewayType raceway) {
    return textOf(kRacewaysNamed, raceway);
}
std::string_view articleText(GutterArticle article) {
    return textOf(kArticlesNamed, article);
}
std::string_view locationText(Location location) {
    return textOf(kLocationsNamed, location);
}

std::optional<Metal> metalFromText(std::string_view text) {
    return kindOf(kMetalsNamed, text);
}
std::optional<Insulation> insulationFromText(std::string_view text) {
    return kindOf(kInsulationsNamed, text);
}
std::optional<Stranding> strandingFromText(std::string_view text) {
    return kindOf(kStrandingsNamed, text);
}
std::optional<RacewayType> racewayFromText(std::string_view text) {
    return kindOf(kRacewaysNamed, text);
}
std::optional<GutterArticle> articleFromText(std::string_view text) {
    return kindOf(kArticlesNamed, text);
}
std::optional<Location> locationFromText(std::string_view text) {
    return kindOf(kLocationsNamed, text);
}

std::span<const Metal> allMetals() {
    return kMetals;
}
std::span<const Insulation> allInsulations() {
    return kInsulations;
}
std::span<const Stranding> allStrandings() {
    return kStrandings;
}
std::span<const RacewayType> allRaceways() {
    return kRaceways;
}
std::span<const GutterArticle> allArticles() {
    return kArticles;
}
std::span<const Location> allLocations() {
    return kLocations;
}

}  // namespace gw::standards

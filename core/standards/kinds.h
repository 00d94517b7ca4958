#pragma once

#include <optional>
#include <span>
#include <string_view>

/// Kinds of things as the standards name them. Each has a text for files (also shown on screen)
/// and a reader that accepts exactly those texts.
namespace gw::standards {

enum class Metal { copper, aluminium, copperCladAluminium };

/// Insulation types of NFPA 70 Table 310.4 (310.104(A) to 2017) that have a Chapter 9 Table 5 row,
/// and bare.
enum class Insulation {
    thhn,
    thwn,
    thwn2,
    xhhw,
    xhhw2,
    xhh,
    tw,
    thw,
    thhw,
    thw2,
    rhh,
    rhw,
    rhw2,  // with outer covering
    rhhNoCover,
    rhwNoCover,
    rhw2NoCover,  // without outer covering
    bare,
};

/// Stranding as in NFPA 70 Chapter 9 Table 10 and ASTM B8/B172-B174/B801.
enum class Stranding { solid, classB, classC, compact, classG, classH, classI, classK, classM };

/// Finer than class B and C: only terminals identified for that class (110.14(A)).
bool isFine(Stranding stranding);

enum class RacewayType { emt, rmc, pvc40, fmc };

enum class GutterArticle { auxiliaryGutter, metalWireway, nonmetallicWireway };

/// Dry, damp and wet as Article 100 defines them; buried = in direct contact with earth.
enum class Location { dry, damp, wet, buried };

std::string_view metalText(Metal metal);  ///< "copper", "aluminium", …
std::string_view insulationText(
    Insulation insulation);  ///< "THHN", "XHHW-2", "RHH without covering", "bare"
std::string_view strandingText(Stranding stranding);  ///< "solid", "B", "C", "compact", "G", …
std::string_view racewayText(RacewayType raceway);    ///< "EMT", "RMC", "PVC-40", "FMC"
std::string_view articleText(GutterArticle article);  ///< "auxiliary gutter", …
std::string_view locationText(Location location);     ///< "dry", …

std::optional<Metal> metalFromText(std::string_view text);
std::optional<Insulation> insulationFromText(std::string_view text);
std::optional<Stranding> strandingFromText(std::string_view text);
std::optional<RacewayType> racewayFromText(std::string_view text);
std::optional<GutterArticle> articleFromText(std::string_view text);
std::optional<Location> locationFromText(std::string_view text);

std::span<const Metal> allMetals();
std::span<const Insulation> allInsulations();
std::span<const Stranding> allStrandings();
std::span<const RacewayType> allRaceways();
std::span<const GutterArticle> allArticles();
std::span<const Location> allLocations();

}  // namespace gw::standards

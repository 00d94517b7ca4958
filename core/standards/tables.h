#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "standards/citation.h"
#include "standards/kinds.h"
#include "standards/trade_size.h"
#include "units/length.h"
#include "units/wire_size.h"

/// The published tables, each looked up by what a person would ask it. Every answer carries the
/// citation of the edition asked; where a table has no value it says why. Values are the same in
/// the editions from 2017 on as far as known; what was not checked for 2026 says so in the note.
/// The cells as printed, with what was verified of each, are in standards/rows.
namespace gw::standards {

// ---- conductors ------------------------------------------------------------------------------

struct ConductorDimensions {
    units::Inches diameter;    ///< over the insulation
    units::SquareInches area;  ///< as printed
};

/// Chapter 9 Table 5; Table 5A for compact stranding; Table 8 for bare. Finer strandings than B are
/// answered from Table 5 with a note: they are a little larger.
Lookup<ConductorDimensions> insulatedConductor(units::WireSize size,
                                               Insulation insulation,
                                               Stranding stranding,
                                               Edition edition);

/// The largest that Table 5 has for a size: what to assume where the insulation is not known.
Lookup<ConductorDimensions> largestInsulatedConductor(units::WireSize size, Edition edition);

struct BareConductor {
    int strands = 1;
    units::Inches diameter;
    units::SquareInches area;       ///< over the overall diameter, as printed
    double copperOhmsPerKft = 0.0;  ///< DC, 75 °C, uncoated
    double aluminiumOhmsPerKft = 0.0;
};
/// Chapter 9 Table 8, the solid or the class B row. Class C is answered by the class B row and says
/// so; so are the finer classes, which are a little larger. Compact: the diameter is that of Table
/// 5A, the area its full circle, strands and resistance the class B row's.
Lookup<BareConductor> bareConductor(units::WireSize size, Stranding stranding, Edition edition);

/// Strand count: 1 for solid, Chapter 9 Table 10 for classes B and C, ASTM B172 to B174 for the
/// finer ones. Compact: the least number ASTM B801 permits, which the note says.
Lookup<int> strandCount(units::WireSize size, Stranding stranding, Edition edition);

// ---- bending ---------------------------------------------------------------------------------

struct BendingSpace {
    std::optional<units::Inches> least;  ///< empty: the table says "not specified" for this size
    units::Inches reduction;  ///< Table (B): may be less by this for removable or lay-in terminals
};
/// Table 312.6(A). wires: per terminal, 1 or more; compactAluminium: AA-8000 of compact stranding.
Lookup<BendingSpace> bendingSpaceAtTerminalA(units::WireSize size,
                                             bool compactAluminium,
                                             int wires,
                                             Edition edition);
/// Table 312.6(B) (of 312.6(B)(2)). wires: 4 stands for four or more.
Lookup<BendingSpace> bendingSpaceOppositeWallB(units::WireSize size,
                                               bool compactAluminium,
                                               int wires,
                                               Edition edition);

/// Which published rule for the least bend radius. All multiply the overall diameter and are
/// measured at the inner surface.
enum class BendRule {
    training,  ///< ICEA S-95-658/NEMA WC 70: 4, 5 or 6 by overall diameter and insulation
    atRest,    ///< 4 up to 25 mm overall, 6 above: a trade table of internal radii, cable in place
    installing,  ///< 6 up to 25 mm overall, 9 above: the same table, while the cable is put in
    over1000V,   ///< NFPA 70 300.34 (305.5 from 2023), nonshielded: 8; not our voltage class
};
/// insulation: thickness; the training rule's first rows hold up to 0.156 in.
Lookup<double> bendRadiusMultiple(units::Inches overallDiameter,
                                  units::Inches insulation,
                                  BendRule rule,
                                  Edition edition);

// ---- ampacity --------------------------------------------------------------------------------

/// Table 310.16 (310.15(B)(16) in 2017), amperes. celsius: 60, 75 or 90. Copper-clad aluminium
/// reads the aluminium columns.
Lookup<double> ampacity(units::WireSize size, Metal metal, int celsius, Edition edition);
/// Table 310.15(C)(1): factor for so many current-carrying conductors, >= 1.
Lookup<double> adjustmentFactor(int currentCarrying, Edition edition);
/// Table 310.15(B)(1)(1): factor for an ambient other than 30 °C. celsius: of the insulation.
Lookup<double> ambientFactor(double ambientCelsius, int insulationCelsius, Edition edition);

// ---- grounding and bonding -------------------------------------------------------------------

struct SizeNeeded {
    std::optional<units::WireSize> size;  ///< empty: larger than any size of the tables
    double circularMils = 0.0;            ///< the area asked for
};
/// Table 250.102(C)(1). ungrounded: area of the largest ungrounded conductor, parallel sets added.
/// Above the table 12.5 % of it, the next standard size; no value there for a jumper of another
/// metal than the conductors.
Lookup<SizeNeeded> bondingJumper(double ungroundedCircularMils,
                                 Metal ungrounded,
                                 Metal jumper,
                                 Edition edition);
/// Table 250.66. metal of both.
Lookup<units::WireSize> groundingElectrodeConductor(double ungroundedCircularMils,
                                                    Metal metal,
                                                    Edition edition);
/// Table 250.122: by the rating of the device ahead, > 0 and up to 6000 A.
Lookup<units::WireSize> equipmentGroundingConductor(double deviceAmperes,
                                                    Metal metal,
                                                    Edition edition);

// ---- raceways and gutters --------------------------------------------------------------------

struct RacewayDimensions {
    units::Inches insideDiameter;
    units::SquareInches area;
    std::optional<units::Inches> outsideDiameter;  ///< empty: not published (FMC)
    int metricDesignator = 0;
};
/// Chapter 9 Table 4; outside diameters from the product standards.
Lookup<RacewayDimensions> racewayDimensions(RacewayType type, TradeSize size, Edition edition);
/// Chapter 9 Table 1: 53, 31 or 40 %; 60 % for a nipple of 24 in or less (note 4).
Lookup<double> racewayFillPercent(int conductors, bool nipple, Edition edition);
/// 20 % and 75 % of the interior, with the section of the article.
Lookup<double> gutterFillPercent(GutterArticle article, Edition edition);
Lookup<double> gutterSpliceFillPercent(GutterArticle article, Edition edition);

struct Knockout {
    units::Inches nominal;
    units::Inches least;
    units::Inches greatest;
    units::Inches locknut;  ///< from memory, ± 1/8 in: for sketches only
};
Lookup<Knockout> knockout(TradeSize size);

struct StockSection {
    units::Inches width;
    units::Inches depth;
};
/// Ordinary trade sizes, no standard. In the table's order.
std::vector<Cited<StockSection>> stockSections();
std::vector<Cited<units::Inches>> stockLengths();

// ---- screws, impedance, colours --------------------------------------------------------------

/// Informative Annex I: for use only where the connector states no torque. lbf-in, column B.
enum class ScrewHead { smallSlot, largeSlot, splitBoltHex, otherHex };
Lookup<double> annexTorqueByConductor(units::WireSize size, ScrewHead head, Edition edition);
/// Recessed hex or square drive, by width across flats: "1/8" … "9/16" (in).
Lookup<double> annexTorqueByRecess(std::string_view acrossFlats, Edition edition);
/// Screws smaller than No. 10 by slot length: "< 5/32" … "> 9/32" (in).
Lookup<double> annexTorqueBySlot(std::string_view slotLength, bool wideSlot, Edition edition);

enum class ConduitMaterial { pvc, aluminium, steel };
struct Impedance {
    double ohmsPerKft = 0.0;  ///< AC resistance to neutral
    double reactancePerKft = 0.0;
};
/// Chapter 9 Table 9, 75 °C, 60 Hz.
Lookup<Impedance> impedance(units::WireSize size,
                            Metal metal,
                            ConduitMaterial conduit,
                            Edition edition);

struct ColourCustom {
    std::string_view system;
    std::string_view conductor;
    std::string_view colour;
    bool requiredByCode;  ///< else customary
};
std::vector<Cited<ColourCustom>> colourCustoms(Edition edition);

}  // namespace gw::standards

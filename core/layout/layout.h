#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/id.h"
#include "base/result.h"
#include "base/vec3.h"
#include "parts/attitude.h"
#include "parts/part.h"
#include "standards/citation.h"
#include "standards/kinds.h"
#include "standards/trade_size.h"
#include "units/length.h"
#include "units/wire_size.h"

/// The document: one gutter with all in it, as plain values. Points are in inches in gutter
/// coordinates: origin at the interior corner left, bottom, back, seen from the cover side;
/// x right along the length, y up, z from the back wall toward the viewer (cover at z = depth).
/// An optional that is empty was not stated; nothing here is assumed.
namespace gw::layout {

using SystemId = Id<struct SystemTag>;
using CircuitId = Id<struct CircuitTag>;
using EntryId = Id<struct EntryTag>;
using BlockId = Id<struct BlockTag>;
using ConductorId = Id<struct ConductorTag>;
using RemarkId = Id<struct RemarkTag>;

// ---- the gutter and where it hangs ----------------------------------------------------------

enum class GutterMaterial { steel, stainlessSteel, aluminium, nonmetallic };
enum class Orientation { horizontal, vertical };

struct Gutter {
    standards::GutterArticle article = standards::GutterArticle::auxiliaryGutter;
    Vec3 inside;  ///< inches: length, height, depth of the clear interior; each > 0
    std::optional<units::Inches> sheet;  ///< thickness of the sheet
    GutterMaterial material = GutterMaterial::steel;
    std::optional<std::string> enclosureType;  ///< "1", "3R", "4X", … as marked
    Orientation orientation = Orientation::horizontal;
    std::optional<units::Inches> supportSpacing;  ///< the greatest between two supports
    /// How far its far end lies beyond the edge of the equipment it supplements, at most its
    /// length; of an auxiliary gutter only.
    std::optional<units::Inches> beyondEquipment;
    std::optional<units::WireSize> largestConductor;  ///< it is designed for, as marked
    friend bool operator==(const Gutter&, const Gutter&) = default;
};

struct Surroundings {
    std::optional<standards::Location> location;
    std::optional<double> ambientCelsius;
    std::optional<bool> floods;  ///< water may stand in it at times
    friend bool operator==(const Surroundings&, const Surroundings&) = default;
};

// ---- what is connected ----------------------------------------------------------------------

enum class Phase { a, b, c, n, g };
enum class Role { service, feeder, tap, branch, bonding };

struct System {
    SystemId id;
    std::string name;  ///< "208Y/120 V, 3-phase, 4-wire"
    std::optional<int> voltsBetweenPhases;
    std::optional<int> voltsToGround;
    std::optional<double> faultKiloamperes;  ///< available at the gutter
    friend bool operator==(const System&, const System&) = default;
};

/// The tap rules of NFPA 70 240.21(B) a circuit may claim (checked from their own facts).
enum class TapRule { none, tenFoot, twentyFiveFoot, highBay, outside, serviceConductors };

/// A set of conductors with one purpose.
struct Circuit {
    CircuitId id;
    std::string name;
    Role role = Role::feeder;
    SystemId system;
    int sets = 1;                      ///< parallel conductors a phase; 1 to 20
    std::vector<Phase> phases;         ///< each once
    std::optional<CircuitId> joins;    ///< the circuit it is tapped or spliced from, phase by phase
    std::optional<bool> bondsNeutral;  ///< a bonding circuit that joins N and G on purpose
    std::optional<double> deviceAmperes;  ///< its overcurrent device
    std::optional<double> loadAmperes;    ///< calculated load
    std::optional<TapRule> tapRule;
    std::optional<std::string> supplies;  ///< "Disconnect 3, boat repair"
    friend bool operator==(const Circuit&, const Circuit&) = default;
};

// ---- where raceways enter -------------------------------------------------------------------

enum class Wall { left, right, top, bottom, back };

/// What bonds a metal raceway to the gutter.
enum class BondedBy {
    standardLocknuts,   ///< and nothing else
    threadedHub,        ///< threads made up wrench-tight
    threadlessFitting,  ///< made up tight, in a clean opening that it fills
    bondingLocknut,     ///< or bonding wedge, in a clean opening
    bushingAndJumper,   ///< a bonding bushing with a jumper
    groundedConductor,  ///< line side only
};

struct Entry {
    EntryId id;
    std::string name;
    Wall wall = Wall::top;
    /// Centre on the wall, inches. top, bottom: u = x, v = z. left, right: u = y, v = z.
    /// back: u = x, v = y.
    double u = 0.0;
    double v = 0.0;
    std::optional<standards::RacewayType> raceway;
    std::optional<standards::TradeSize> tradeSize;
    std::optional<units::Inches> racewayLength;  ///< beyond the gutter; 24 in or less is a nipple
    std::optional<bool> insulatingBushing;
    std::optional<BondedBy> bondedBy;              ///< the metal raceway to the gutter
    std::optional<units::WireSize> bondingJumper;  ///< of copper, with a bonding bushing
    std::string leadsTo;
    friend bool operator==(const Entry&, const Entry&) = default;
};

// ---- blocks ---------------------------------------------------------------------------------

struct OpenMouth {
    parts::PortName port;
    bool near = true;  ///< which mouth of an `either` port is open; the cap closes the other
    friend bool operator==(const OpenMouth&, const OpenMouth&) = default;
};

struct Block {
    BlockId id;
    std::string name;  ///< "A", "Block N"
    parts::PartId part;
    Vec3 corner;  ///< inches: least x, y, z of the body as turned
    parts::Attitude attitude;
    std::optional<bool> mounted;  ///< bolted down through its holes
    std::vector<OpenMouth> openMouths;
    std::optional<Phase> phase;  ///< what it is meant to carry
    friend bool operator==(const Block&, const Block&) = default;
};

// ---- conductors -----------------------------------------------------------------------------

/// At a raceway: comes through this entry in this slot (1 is the first of the packing).
struct AtEntry {
    EntryId entry;
    int slot = 1;
    friend bool operator==(const AtEntry&, const AtEntry&) = default;
};

/// In a port: cut, stripped and pushed in.
struct InPort {
    BlockId block;
    parts::PortName port;
    std::optional<units::Inches> strip;  ///< insulation removed at this end
    /// Tip beyond the open mouth; empty: to the stop, or half way where both mouths are open.
    std::optional<units::Inches> inserted;
    friend bool operator==(const InPort&, const InPort&) = default;
};

/// Left capped in the gutter.
struct Spare {
    Vec3 tip;
    friend bool operator==(const Spare&, const Spare&) = default;
};

using End = std::variant<AtEntry, InPort, Spare>;

/// Insulation removed mid-conductor so that it can pass through a port uncut. Measured along the
/// port's direction from its near mouth; a negative start is outside the body.
struct Pass {
    BlockId block;
    parts::PortName port;
    std::optional<units::Inches> windowStart;
    std::optional<units::Inches> windowLength;
    friend bool operator==(const Pass&, const Pass&) = default;
};

/// A point where two legs would meet, and the centreline radius of the bend that joins them.
struct Corner {
    Vec3 at;
    units::Inches radius;
    friend bool operator==(const Corner&, const Corner&) = default;
};

struct Conductor {
    ConductorId id;
    std::string tag;  ///< as marked on the conductor: "S1-A"
    CircuitId circuit;
    int set = 1;  ///< 1 … circuit.sets
    Phase phase = Phase::a;
    units::WireSize size = units::WireSize::of("14");
    std::optional<standards::Metal> metal;
    std::optional<standards::Insulation> insulation;
    std::optional<standards::Stranding> stranding;
    std::optional<units::Inches> outsideDiameter;  ///< measured; else from the tables
    std::optional<std::string> colour;
    End from;
    End to;
    std::vector<Corner> corners;  ///< from `from` to `to`
    std::vector<Pass> passes;     ///< in order along the path
    friend bool operator==(const Conductor&, const Conductor&) = default;
};

// ---- review, and the whole ------------------------------------------------------------------

struct Remark {
    RemarkId id;
    std::string author;
    std::string text;
    std::optional<Vec3> at;
    std::optional<std::string> item;  ///< id of what it is pinned to
    bool settled = false;
    friend bool operator==(const Remark&, const Remark&) = default;
};

/// Where the wording is disputed among inspectors: the reading the local authority takes.
/// Empty: not recorded; findings then give both.
struct Readings {
    /// Whether the 20 % for conductors still binds in a plane that also holds a splice, or the
    /// 75 % for splices takes its place there.
    enum class FillAtSplice { twentyStillBinds, seventyFiveReplaces };
    /// Which table speaks at the terminal of an insulated connector that is not a distribution
    /// block: the opposite-wall table as for blocks, or only the gutter's width where it bends.
    enum class TerminalSpace { asForBlocks, gutterWidthOnly };
    /// Whether the inside of a weatherproof enclosure in a wet location is itself wet.
    enum class InsideWeatherproof { wet, notWet };

    std::optional<FillAtSplice> fillAtSplice;
    std::optional<TerminalSpace> terminalSpace;
    std::optional<InsideWeatherproof> insideWeatherproof;
    friend bool operator==(const Readings&, const Readings&) = default;
};

/// What the local authority has put in place of the published limits. Empty: nothing amended.
struct Amendments {
    std::optional<double> conductorFillPercent;  ///< of the inside, > 0 to 100
    std::optional<double> spliceFillPercent;     ///< with the blocks, > 0 to 100
    std::optional<double> bendRadiusMultiple;    ///< of the overall diameter, 1 to 20
    std::string source;                          ///< "yard ordinance 12"
    bool any() const { return conductorFillPercent || spliceFillPercent || bendRadiusMultiple; }
    friend bool operator==(const Amendments&, const Amendments&) = default;
};

struct Layout {
    std::string title;
    std::string project;  ///< "Riverside yard, building 4"
    std::string drawnBy;
    std::string date;  ///< as printed in the title block; never the clock's
    std::string revision;
    standards::Edition edition = standards::Edition::nec2023;
    units::LengthUnit displayUnit = units::LengthUnit::inch;
    Gutter gutter;
    Surroundings surroundings;
    Readings readings;
    Amendments amendments;
    std::vector<System> systems;
    std::vector<Circuit> circuits;
    std::vector<Entry> entries;
    std::vector<Block> blocks;
    std::vector<Conductor> conductors;
    std::vector<Remark> remarks;
    std::vector<parts::Part> parts;  ///< the layout's own parts, beside the shelf's
    friend bool operator==(const Layout&, const Layout&) = default;
};

/// Texts for files and screen.
std::string_view materialText(GutterMaterial material);  ///< "steel", "stainless steel", …
std::string_view orientationText(Orientation orientation);
std::string_view phaseText(Phase phase);  ///< "A", "B", "C", "N", "G"
std::string_view roleText(Role role);
std::string_view tapRuleText(TapRule rule);  ///< "none", "10 ft", "25 ft", "high bay", …
std::string_view wallText(Wall wall);
std::string_view bondedByText(BondedBy means);  ///< "standard locknuts", "threaded hub", …
std::string_view fillAtSpliceText(Readings::FillAtSplice reading);
std::string_view terminalSpaceText(Readings::TerminalSpace reading);
std::string_view insideWeatherproofText(Readings::InsideWeatherproof reading);

/// Every value of a kind, in the order of the enum.
std::span<const GutterMaterial> allMaterials();
std::span<const Orientation> allOrientations();
std::span<const Phase> allPhases();
std::span<const Role> allRoles();
std::span<const TapRule> allTapRules();
std::span<const Wall> allWalls();
std::span<const BondedBy> allBondedBy();
std::span<const Readings::FillAtSplice> allFillAtSpliceReadings();
std::span<const Readings::TerminalSpace> allTerminalSpaceReadings();
std::span<const Readings::InsideWeatherproof> allInsideWeatherproofReadings();

/// Readers that accept exactly those texts.
std::optional<GutterMaterial> materialFromText(std::string_view text);
std::optional<Orientation> orientationFromText(std::string_view text);
std::optional<Phase> phaseFromText(std::string_view text);
std::optional<Role> roleFromText(std::string_view text);
std::optional<TapRule> tapRuleFromText(std::string_view text);
std::optional<Wall> wallFromText(std::string_view text);
std::optional<BondedBy> bondedByFromText(std::string_view text);
std::optional<Readings::FillAtSplice> fillAtSpliceFromText(std::string_view text);
std::optional<Readings::TerminalSpace> terminalSpaceFromText(std::string_view text);
std::optional<Readings::InsideWeatherproof> insideWeatherproofFromText(std::string_view text);

/// Inward unit normal of a wall.
Vec3 inwardNormal(Wall wall);
/// The point of a wall's inner face at u, v (as in Entry), in gutter coordinates.
Vec3 onWall(const Gutter& gutter, Wall wall, double u, double v);
/// Centre of an entry on the inner face of its wall, in gutter coordinates.
Vec3 entryCentre(const Gutter& gutter, const Entry& entry);

/// The one validation. What passes, all code downstream accepts. The first problem found, in the
/// order of the members above, with its JSON pointer ("/conductors/3/from/port") as `place`.
/// - Ids valid (isValidId) and unique over the whole layout; part ids unique among `parts`.
/// - Every reference leads to something that is there; parts are in `layout.parts` or `shelf`.
///   A circuit does not join itself, however far round.
/// - Texts at most 400 bytes without control characters.
/// - Numbers finite and in range: the gutter 1 to 1200 in each way, points within ±1200 in, entry
///   centres on their wall, bend radii 0 to 600 in, sets 1 to 20, conductor sets and phases those
///   of their circuit, slots 1 to 400 and each taken once, insertions no deeper than the bore,
///   outside diameters 0.01 to 6 in. Slots may leave gaps.
/// - Passes go through ports open at both mouths; open mouths are stated of `either` ports only.
/// Blocks and corners may lie outside the gutter: that is for the checks to say.
Result<void> validate(const Layout& layout, const parts::Shelf& shelf);

/// The part a block is an instance of: the layout's own first, then the shelf's; nullptr if
/// neither.
const parts::Part* findPart(const Layout& layout,
                            const parts::Shelf& shelf,
                            const parts::PartId& id);

}  // namespace gw::layout

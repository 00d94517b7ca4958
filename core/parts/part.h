#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/id.h"
#include "base/vec3.h"
#include "standards/kinds.h"
#include "units/length.h"
#include "units/wire_size.h"

/// A connector's data, as a part file states it. What the file does not state stays missing
/// (std::optional, empty map), and the checks that need it answer "cannot tell".
///
/// Body coordinates: the body is the box [0,length] x [0,height] x [0,depth] in inches. In the
/// attitude the part is drawn in, length runs along the gutter, z = 0 is the mounting face
/// (against the back wall) and z = depth looks at the cover.
namespace gw::parts {

using PartId = Id<struct PartTag>;
using PortName = Id<struct PortTag>;  ///< unique within the part: "1", "2", "in"
using ScrewName = Id<struct ScrewTag>;

/// What a port takes: one row of the connector's wire table.
struct PortRange {
    std::vector<standards::Metal> metals;
    std::vector<standards::Stranding> strandings;
    units::WireSize smallest = units::WireSize::of("14");
    units::WireSize largest = units::WireSize::of("14");
    std::optional<int> conductors;  ///< most conductors of such kind in the port at once; >= 1
    friend bool operator==(const PortRange&, const PortRange&) = default;
};

/// Which mouths of a bore are open.
enum class PortOpening {
    near,    ///< a blind bore: only the mouth at `mouth`
    both,    ///< through: a conductor may pass uncut
    either,  ///< caps can be moved: each placed block says which one mouth is open
};

/// One bore with its screw(s).
struct Port {
    PortName name;
    Vec3 mouth;      ///< inches, centre of the near mouth, on the body's surface
    Vec3 direction;  ///< unit, one of ±x ±y ±z: from the near mouth into the bore
    PortOpening opening = PortOpening::near;
    /// From the near mouth to the stop (near), or to the far mouth (both, either).
    units::Inches boreDepth;
    units::Inches boreDiameter;                   ///< clear bore, for drawing
    std::vector<PortRange> accepts;               ///< empty: not stated
    std::optional<units::Inches> stripLength;     ///< insulation to remove at a conductor's end
    std::optional<units::Inches> stripTolerance;  ///< plus and minus
    bool window = false;                          ///< full insertion can be seen
    friend bool operator==(const Port&, const Port&) = default;
};

struct TorqueRow {
    units::WireSize smallest;
    units::WireSize largest;
    double poundInches;  ///< lbf-in, > 0
    friend bool operator==(const TorqueRow&, const TorqueRow&) = default;
};

struct Screw {
    ScrewName name;
    PortName port;      ///< whose conductor it clamps
    Vec3 head;          ///< inches, centre of the head's face
    Vec3 outward;       ///< unit, axis-aligned: from the head toward the driver
    std::string drive;  ///< "hex 1/4 in", "slot 1/4 in", "square 3/8 in"; empty: not stated
    std::vector<TorqueRow> torque;  ///< empty: not stated
    friend bool operator==(const Screw&, const Screw&) = default;
};

struct MountingHole {
    Vec3 centre;  ///< inches, on the mounting face
    units::Inches diameter;
    friend bool operator==(const MountingHole&, const MountingHole&) = default;
};

/// Which rules bind it: a wire connector floats on its conductors or is bolted down; a power
/// distribution block is listed as such and brings the rules for blocks in wireways with it.
enum class ConnectorKind { wireConnector, distributionBlock };

/// What the connector is listed for. Unstated stays unstated.
struct Listing {
    std::optional<ConnectorKind> kind;
    std::vector<standards::Location> locations;  ///< empty: not stated
    std::optional<bool> temporarySubmersion;     ///< sealed bodies: never permanent
    std::optional<bool> lineSideOfService;
    std::optional<int> celsius;  ///< 60, 75 or 90
    std::optional<int> volts;
    std::optional<double> shortCircuitKiloamperes;  ///< as marked; > 0
    friend bool operator==(const Listing&, const Listing&) = default;
};

struct Part {
    PartId id;
    std::string name;         ///< what it is, in plain words
    std::string family;       ///< "row, one side", "row, through", "two tier", …: for the shelf
    std::string note;         ///< shipped parts: that they are invented demonstration data
    Vec3 body;                ///< inches: length, height, depth; each > 0
    bool insulated = true;    ///< the body covers every live part
    std::vector<Port> ports;  ///< at least 2
    std::vector<Screw> screws;
    std::vector<MountingHole> mountingHoles;
    Listing listing;
    std::optional<Vec3> leastEnclosure;     ///< inches: length, height, depth it asks for
    std::optional<bool> inhibitorIncluded;  ///< oxide inhibitor comes in the ports
    std::optional<double> weightPounds;
    std::optional<double> priceDollars;
    bool shipped = false;  ///< from our own invented shelf
    friend bool operator==(const Part&, const Part&) = default;
};

/// The bore's far end in body coordinates (stop or far mouth).
Vec3 boreEnd(const Port& port);

/// The parts at hand: shipped and the user's own, by id, in order of id.
using Shelf = std::map<PartId, Part>;

}  // namespace gw::parts

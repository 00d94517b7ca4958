#include "takeoff/strip_and_torque.h"

#include "checks/occupancy.h"
#include "parts/torque.h"
#include "takeoff/cut_list.h"
#include "takeoff/words.h"

namespace gw::takeoff {

using checks::Occupant;
using geometry::BuiltLayout;
using units::Inches;

namespace {

StripAndTorque baseOf(const BuiltLayout& built,
                      std::size_t block,
                      std::size_t port,
                      const Occupant& occupant) {
    StripAndTorque row;
    row.block = block;
    row.port = port;
    row.conductor = occupant.conductor;
    if (const auto* pass = checks::passOf(built, occupant)) {
        row.uncut = true;
        if (pass->window) {
            row.window = Inches::of(pass->window->second - pass->window->first);
        }
        return row;
    }
    const auto& said = built.layout.conductors[occupant.conductor];
    const bool from = occupant.how == Occupant::How::from;
    row.strip = stripOf(built, from ? said.from : said.to, *checks::endOf(built, occupant));
    return row;
}

void addScrews(std::vector<StripAndTorque>& rows,
               const BuiltLayout& built,
               const StripAndTorque& base) {
    const auto& part = *built.blocks[base.block].part;
    const auto size = built.layout.conductors[base.conductor].size;
    const std::size_t before = rows.size();
    for (const auto& screw : part.screws) {
        if (screw.port == part.ports[base.port].name) {
            rows.push_back(base);
            rows.back().screw = screw.name.text();
            rows.back().drive = screw.drive;
            rows.back().poundInches = parts::statedTorque(screw, size);
        }
    }
    if (rows.size() == before) {
        rows.push_back(base);
    }
}

/// What the part does not state: "torque and strip: from the connector's instructions".
std::string missingText(const StripAndTorque& row) {
    std::string what;
    const auto miss = [&](bool known, const char* name) {
        what += known ? "" : (what.empty() ? "" : " and ") + std::string(name);
    };
    miss(row.poundInches.has_value(), "torque");
    miss(row.uncut ? row.window.has_value() : row.strip.has_value(),
         row.uncut ? "window" : "strip");
    return what.empty() ? what : what + ": from the connector's instructions";
}

std::string toolText(const StripAndTorque& row) {
    return row.drive.empty() ? "torque tool for the screw" : "torque tool, " + row.drive;
}

}  // namespace

std::vector<StripAndTorque> stripAndTorque(const BuiltLayout& built) {
    const checks::Occupancy occupancy(built);
    std::vector<StripAndTorque> rows;
    for (std::size_t block = 0; block < built.blocks.size(); ++block) {
        for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
            for (const auto& occupant : occupancy.of(block, port)) {
                addScrews(rows, built, baseOf(built, block, port, occupant));
            }
        }
    }
    return rows;
}

Table stripAndTorqueTable(const BuiltLayout& built) {
    Table table{"strip-and-torque",
                "Strip and torque schedule",
                "Strip and torque as the layout and the part state them for the conductor's size. "
                "Every screw is tightened once with the tool named, and marked; the code asks for "
                "the torque of the listing or instructions, by an approved means (NFPA 70 "
                "110.14(D)).",
                {{"Block"},
                 {"Port"},
                 {"Screw"},
                 {"Conductor"},
                 {"Size"},
                 {"Strip", Kind::length},
                 {"Window", Kind::length},
                 {"Drive"},
                 {"Torque", Kind::number, "lbf-in"},
                 {"Tool"},
                 {"Missing"},
                 {"Reading", Kind::box},
                 {"Initials", Kind::box},
                 {"Date", Kind::box}},
                {}};
    for (const auto& row : stripAndTorque(built)) {
        const auto& conductor = built.layout.conductors[row.conductor];
        table.rows.push_back({nameOf(built.layout.blocks[row.block]),
                              built.blocks[row.block].part->ports[row.port].name.text(),
                              row.screw.empty() ? kNotStated : row.screw,
                              tagOf(conductor),
                              conductor.size.text(),
                              lengthCell(row.strip),
                              lengthCell(row.window),
                              row.drive.empty() ? kNotStated : row.drive,
                              row.poundInches ? Cell(*row.poundInches) : Cell(),
                              toolText(row),
                              missingText(row),
                              Cell(),
                              Cell(),
                              Cell()});
    }
    table.notes.emplace_back(
        "The connector's own instructions come before this list. Work de-energised, locked out and "
        "tested.");
    return table;
}

}  // namespace gw::takeoff

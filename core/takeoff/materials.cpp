#include "takeoff/materials.h"

#include <cmath>
#include <map>
#include <utility>

#include "takeoff/words.h"

namespace gw::takeoff {
namespace {

using geometry::BuiltLayout;

enum MaterialColumn { kItem, kQuantity, kUnit, kPrice, kTogether };

/// A price is a whole number of cents, so that the lines add up to what is printed.
double inCents(double dollars) {
    return std::round(dollars * 100.0) / 100.0;
}

void add(Table& table,
         std::string item,
         double quantity,
         const char* unit,
         std::optional<double> price = {}) {
    table.rows.push_back({std::move(item),
                          quantity,
                          std::string(unit),
                          price ? Cell(inCents(*price)) : Cell(),
                          price ? Cell(inCents(inCents(*price) * quantity)) : Cell()});
}

void addGutter(Table& table, const BuiltLayout& built) {
    const auto& gutter = built.layout.gutter;
    const auto length = [&](double inches) {
        return units::formatLength(units::Inches::of(inches), built.layout.displayUnit);
    };
    const auto& inside = gutter.inside;
    add(table,
        std::string(standards::articleText(gutter.article)) + ", " +
            std::string(layout::materialText(gutter.material)) + ", inside " + length(inside.y) +
            " × " + length(inside.z) + ", " + length(inside.x) + " long, type " +
            gutter.enclosureType.value_or(kNotStated) + ", with cover",
        1,
        "piece");
}

void addBlocks(Table& table, const BuiltLayout& built) {
    std::map<parts::PartId, std::pair<const parts::Part*, double>> parts;
    for (const auto& block : built.blocks) {
        auto& [part, count] = parts[block.part->id];
        part = block.part;
        count += 1.0;
    }
    for (const auto& [id, counted] : parts) {
        add(table,
            "tap block " + id.text() + ": " + counted.first->name,
            counted.second,
            "piece",
            counted.first->priceDollars);
    }
}

void addScrews(Table& table, const BuiltLayout& built) {
    std::map<double, double> holes;  // by diameter
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        if (built.layout.blocks[i].mounted.value_or(false)) {
            for (const auto& hole : built.blocks[i].part->mountingHoles) {
                holes[hole.diameter.in()] += 1.0;
            }
        }
    }
    for (const auto& [diameter, count] : holes) {
        add(table,
            "mounting screw with washer and nut for a hole of " +
                units::formatDecimal(diameter, 3) + " in",
            count,
            "piece");
    }
}

std::string fittingText(const layout::Entry& entry) {
    const auto size = entry.tradeSize ? std::string(entry.tradeSize->text()) : kNotStated;
    return orNotStated(entry.raceway, standards::racewayText) + " trade size " + size +
           ": connector or locknuts" +
           (entry.insulatingBushing.value_or(false) ? ", insulating bushing" : "") +
           (entry.bondedBy ? ", bonded by " + std::string(layout::bondedByText(*entry.bondedBy))
                           : "");
}

void addFittings(Table& table, const BuiltLayout& built) {
    std::map<std::string, double> fittings;
    for (const auto& entry : built.layout.entries) {
        fittings[fittingText(entry)] += 1.0;
    }
    for (const auto& [text, count] : fittings) {
        add(table, "raceway entry, " + text, count, "set");
    }
}

/// In the order of the reel table, whose texts and feet these are.
void addConductors(Table& table, const BuiltLayout& built, const CutOptions& options) {
    const auto reels = reelTable(built, options);
    for (const auto& row : reels.rows) {
        const auto said = [&](std::size_t i) { return std::get<std::string>(row[i]); };
        std::string item = "conductor " + said(0) + " " + said(1) + " " + said(2) + ", strand " +
                           said(3) + ", " + said(4);
        add(table, std::move(item), std::get<double>(row.back()), "ft");
    }
}

/// A tag at each end of each conductor, one on each block.
void addLabels(Table& table, const BuiltLayout& built) {
    const auto conductors = static_cast<double>(built.layout.conductors.size());
    if (conductors > 0.0) {
        add(table, "label, conductor tag", 2.0 * conductors, "piece");
    }
    if (!built.layout.blocks.empty()) {
        add(table, "label, block", static_cast<double>(built.layout.blocks.size()), "piece");
    }
}

void notePrices(Table& table, bool shippedParts) {
    double known = 0.0;
    std::size_t without = 0;
    for (const auto& row : table.rows) {
        const auto* together = std::get_if<double>(&row[kTogether]);
        known += together != nullptr ? *together : 0.0;
        without += together == nullptr ? 1 : 0;
    }
    table.notes.push_back("The prices that are known come to $" +
                          shown(known, {"", Kind::money}, {}) + "; " + std::to_string(without) +
                          " of " + std::to_string(table.rows.size()) + " lines have no price.");
    if (shippedParts) {
        table.notes.emplace_back(
            "Parts that come with the program are invented demonstration data, their prices too: "
            "replace them with the data of the connector you buy.");
    }
}

/// "Not counted, since it is not stated …: A, B." where there are any.
void noteUncounted(Table& table, const std::string& what, const std::vector<std::string>& names) {
    std::string all;
    for (const auto& name : names) {
        all += (all.empty() ? "" : ", ") + name;
    }
    if (!all.empty()) {
        table.notes.push_back("Not counted, since not stated: " + what + all + ".");
    }
}

void noteWhatIsMissing(Table& table, const BuiltLayout& built) {
    std::vector<std::string> blocks;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        const auto& block = built.layout.blocks[i];
        if (!block.mounted && !built.blocks[i].part->mountingHoles.empty()) {
            blocks.push_back(nameOf(block));
        }
    }
    std::vector<std::string> raceways;
    std::vector<std::string> bonds;
    for (const auto& entry : built.layout.entries) {
        const auto& name = entry.name.empty() ? entry.id.text() : entry.name;
        if (!entry.racewayLength) {
            raceways.push_back(name);
        }
        if (!entry.bondedBy) {
            bonds.push_back(name);
        }
    }
    noteUncounted(table, "the screws of blocks, which may be bolted down or not: ", blocks);
    noteUncounted(table, "conductor in the raceways beyond the entries: ", raceways);
    noteUncounted(table, "what bonds the raceways at the entries: ", bonds);
}

bool anyShipped(const BuiltLayout& built) {
    for (const auto& block : built.blocks) {
        if (block.part->shipped) {
            return true;
        }
    }
    return false;
}

}  // namespace

Table materialTable(const BuiltLayout& built, const CutOptions& options) {
    Table table{"materials",
                "Bill of materials",
                "Counted from the layout: blocks by part, conductors as on the reel list, a set of "
                "fittings for each entry, a screw for each mounting hole of a block that is bolted "
                "down, a tag at each conductor end and on each block.",
                {{"Item"},
                 {"Quantity", Kind::count},
                 {"Unit"},
                 {"Price", Kind::money},
                 {"Together", Kind::money}},
                {}};
    addGutter(table, built);
    addBlocks(table, built);
    addScrews(table, built);
    addConductors(table, built, options);
    addFittings(table, built);
    addLabels(table, built);
    noteWhatIsMissing(table, built);
    notePrices(table, anyShipped(built));
    return table;
}

}  // namespace gw::takeoff

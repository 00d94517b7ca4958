#include "takeoff/weights.h"

#include <map>
#include <tuple>

#include "standards/tables.h"
#include "takeoff/words.h"

namespace gw::takeoff {

using geometry::BuiltLayout;
using standards::Insulation;
using standards::Metal;

namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kPoundsPerCubicInch = 0.0361273;  // of 1 g/cm³
constexpr double kLay = 1.02;

double densityOf(Metal metal) {
    switch (metal) {
        case Metal::copper:
            return 8.89;
        case Metal::aluminium:
            return 2.703;
        case Metal::copperCladAluminium:
            return 3.32;
    }
    return 0.0;
}

/// g/cm³.
double densityOf(Insulation insulation) {
    constexpr double kPvc = 1.40;
    constexpr double kCrossLinked = 0.93;
    switch (insulation) {
        case Insulation::thhn:
        case Insulation::thwn:
        case Insulation::thwn2:
        case Insulation::tw:
        case Insulation::thw:
        case Insulation::thhw:
        case Insulation::thw2:
            return kPvc;
        case Insulation::xhhw:
        case Insulation::xhhw2:
        case Insulation::xhh:
        case Insulation::rhh:
        case Insulation::rhw:
        case Insulation::rhw2:
        case Insulation::rhhNoCover:
        case Insulation::rhwNoCover:
        case Insulation::rhw2NoCover:
            return kCrossLinked;
        case Insulation::bare:
            return 0.0;
    }
    return 0.0;
}

/// lb/ft² for each inch of thickness; empty: no sheet metal.
std::optional<double> sheetDensity(layout::GutterMaterial material) {
    switch (material) {
        case layout::GutterMaterial::steel:
            return 41.82;
        case layout::GutterMaterial::stainlessSteel:
            return 42.0;
        case layout::GutterMaterial::aluminium:
            return 14.1;
        case layout::GutterMaterial::nonmetallic:
            return std::nullopt;
    }
    return std::nullopt;
}

void add(Table& table, std::string item, double count, double pounds) {
    table.rows.push_back({std::move(item), count, pounds});
}

double addConductors(Table& table, const BuiltLayout& built) {
    std::map<std::tuple<int, std::string, std::string>, std::pair<double, double>> kinds;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& said = built.layout.conductors[i];
        const auto& conductor = built.conductors[i];
        auto& [count, pounds] = kinds[{said.size.rank(), metalOf(said), insulationOf(said)}];
        count += 1.0;
        pounds += poundsPerThousandFeet(said, conductor.diameter, built.layout.edition) *
                  conductor.built.path.length().in() / 12000.0;
    }
    double all = 0.0;
    for (const auto& [kind, sum] : kinds) {
        const auto& [rank, metal, insulation] = kind;
        add(table,
            "conductors in the gutter, " +
                units::WireSize::all()[static_cast<std::size_t>(rank)].text() + ", " + metal +
                ", " + insulation,
            sum.first,
            sum.second);
        all += sum.second;
    }
    return all;
}

/// What stands in for a metal or an insulation that is not stated is told.
void noteAssumed(Table& table, const BuiltLayout& built) {
    std::string tags;
    for (const auto& conductor : built.layout.conductors) {
        if (!conductor.metal || !conductor.insulation) {
            tags += (tags.empty() ? "" : ", ") + tagOf(conductor);
        }
    }
    if (!tags.empty()) {
        table.notes.push_back("Metal or insulation is not stated of " + tags +
                              ": counted as copper and PVC, the heavier.");
    }
}

double addBlocks(Table& table, const BuiltLayout& built) {
    std::map<parts::PartId, std::pair<const parts::Part*, double>> parts;
    for (const auto& block : built.blocks) {
        auto& [part, count] = parts[block.part->id];
        part = block.part;
        count += 1.0;
    }
    double all = 0.0;
    for (const auto& [id, counted] : parts) {
        const auto& [part, count] = counted;
        if (part->weightPounds) {
            add(table, "tap blocks " + id.text(), count, *part->weightPounds * count);
            all += *part->weightPounds * count;
        } else {
            table.notes.push_back("The weight of part " + id.text() + " is not stated.");
        }
    }
    return all;
}

double addSheet(Table& table, const layout::Gutter& gutter) {
    const auto sheet = sheetWeight(gutter);
    if (!sheet) {
        table.notes.emplace_back(
            "The gutter's own weight is not known: its sheet is not stated, or it is nonmetallic.");
        return 0.0;
    }
    add(table, "gutter without cover", 1, sheet->trough);
    add(table, "cover", 1, sheet->cover);
    return sheet->trough + sheet->cover;
}

}  // namespace

double poundsPerThousandFeet(const layout::Conductor& conductor,
                             units::Inches overall,
                             standards::Edition edition) {
    const auto stranding = conductor.stranding.value_or(standards::Stranding::classB);
    const double lay = stranding == standards::Stranding::solid ? 1.0 : kLay;
    const double metal = conductor.size.circularMils() * kPi / 4.0 * 1e-6 * 12000.0 *
                         densityOf(conductor.metal.value_or(Metal::copper)) * kPoundsPerCubicInch *
                         lay;
    const auto bare = standards::bareConductor(conductor.size, stranding, edition);
    const double inner = bare ? bare->value.diameter.in() : 0.0;
    const double ring = kPi / 4.0 * (overall.in() * overall.in() - inner * inner);
    const double insulation = ring * 12000.0 * kPoundsPerCubicInch *
                              densityOf(conductor.insulation.value_or(Insulation::thhn));
    return metal + std::max(0.0, insulation);
}

std::optional<SheetWeight> sheetWeight(const layout::Gutter& gutter) {
    const auto density = sheetDensity(gutter.material);
    if (!gutter.sheet || !density) {
        return std::nullopt;
    }
    const double perSquareInch = *density * gutter.sheet->in() / 144.0;
    const auto& inside = gutter.inside;
    const double trough =
        inside.x * inside.y + 2.0 * inside.x * inside.z + 2.0 * inside.y * inside.z;
    return SheetWeight{trough * perSquareInch, inside.x * inside.y * perSquareInch};
}

Table weightTable(const BuiltLayout& built) {
    Table table{
        "weights",
        "Weights",
        "Estimates, ±5 %. Conductors by metal and insulation for their length in the gutter; "
        "blocks as the part states; sheet metal by its area without flanges, laps and "
        "fastenings (some 8 % more, from memory).",
        {{"Item"}, {"Count", Kind::count}, {"Weight", Kind::number, "lb"}},
        {}};
    const double all = addSheet(table, built.layout.gutter) + addBlocks(table, built) +
                       addConductors(table, built);
    add(table, "together, as far as known", 1, all);
    noteAssumed(table, built);
    const double feet = built.layout.gutter.inside.x / 12.0;
    table.notes.push_back("That is " + units::formatDecimal(all / feet, 1) +
                          " lb for each foot of gutter on its supports.");
    table.notes.emplace_back(
        "Lift caution: above some 50 lb two people or a lift (common practice, no source). Hang "
        "and "
        "fasten the gutter before the conductors go in; the anchors are to carry the whole.");
    return table;
}

}  // namespace gw::takeoff

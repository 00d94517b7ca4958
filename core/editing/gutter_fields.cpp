#include <algorithm>

#include "editing/field_forms.h"
#include "editing/place.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Layout;

namespace {

constexpr std::array kEditions = {standards::Edition::nec2017,
                                  standards::Edition::nec2020,
                                  standards::Edition::nec2023,
                                  standards::Edition::nec2026};
constexpr std::array kUnits = {units::LengthUnit::inch, units::LengthUnit::millimetre};

std::string_view unitText(units::LengthUnit unit) {
    return unit == units::LengthUnit::inch ? "inches" : "millimetres";
}

/// length, height or depth: what is in the gutter follows.
void addExtent(FieldMaker<layout::Gutter>& maker,
               const BuiltLayout& built,
               std::string name,
               std::string label,
               double Vec3::*axis) {
    const auto unit = built.layout.displayUnit;
    const std::string value = lengthText(units::Inches::of(built.gutter().inside.*axis), unit);
    maker.add(std::move(name), std::move(label), FieldKind::length, value).edit =
        [axis, unit](const BuiltLayout& before, std::string_view typed) -> Edit {
        const auto length = units::parseLength(typed, unit);
        if (!length) {
            return fail(length.error());
        }
        Vec3 inside = before.gutter().inside;
        inside.*axis = length->in();
        return setGutterSize(before, inside);
    };
}

void addGutter(std::vector<Field>& fields, const BuiltLayout& built) {
    using layout::Gutter;
    FieldMaker<Gutter> maker(
        built.layout, built.layout.gutter, [](Layout& one) -> Gutter& { return one.gutter; });
    maker.group("Gutter");
    maker.choice(
        "article", "Kind", standards::allArticles, standards::articleText, &Gutter::article);
    addExtent(maker, built, "length", "Length inside", &Vec3::x);
    addExtent(maker, built, "height", "Height inside", &Vec3::y);
    addExtent(maker, built, "depth", "Depth inside", &Vec3::z);
    maker.choice(
        "material", "Material", layout::allMaterials, layout::materialText, &Gutter::material);
    maker.length("sheet", "Sheet thickness", &Gutter::sheet);
    maker.text("enclosure type", "Enclosure type", &Gutter::enclosureType);
    maker.choice("orientation",
                 "Hangs",
                 layout::allOrientations,
                 layout::orientationText,
                 &Gutter::orientation);
    maker.length("support spacing", "Support spacing", &Gutter::supportSpacing);
    maker.length("beyond equipment", "Beyond the equipment", &Gutter::beyondEquipment);
    maker.choice(
        "largest conductor",
        "Largest conductor, as marked",
        units::WireSize::all,
        [](const units::WireSize& size) { return size.text(); },
        &Gutter::largestConductor);
    auto made = std::move(maker).finish();
    std::move(made.begin(), made.end(), std::back_inserter(fields));
}

void addSurroundings(std::vector<Field>& fields, const BuiltLayout& built) {
    using layout::Surroundings;
    FieldMaker<Surroundings> maker(built.layout,
                                   built.layout.surroundings,
                                   [](Layout& one) -> Surroundings& { return one.surroundings; });
    maker.group("Where it hangs");
    maker.choice("location",
                 "Location",
                 standards::allLocations,
                 standards::locationText,
                 &Surroundings::location);
    maker.number("ambient", "Ambient (°C)", "°C", &Surroundings::ambientCelsius);
    maker.truth("floods", "Water may stand in it", &Surroundings::floods);
    auto made = std::move(maker).finish();
    std::move(made.begin(), made.end(), std::back_inserter(fields));
}

void addAuthority(std::vector<Field>& fields, const BuiltLayout& built) {
    using layout::Readings;
    FieldMaker<Readings> maker(
        built.layout, built.layout.readings, [](Layout& one) -> Readings& { return one.readings; });
    maker.group("As the local authority reads it");
    maker.whose("the local authority");
    maker.choice("fill at splice",
                 "Fill at a splice",
                 layout::allFillAtSpliceReadings,
                 layout::fillAtSpliceText,
                 &Readings::fillAtSplice);
    maker.choice("terminal space",
                 "Space at terminals",
                 layout::allTerminalSpaceReadings,
                 layout::terminalSpaceText,
                 &Readings::terminalSpace);
    maker.choice("inside weatherproof",
                 "Inside a weatherproof one",
                 layout::allInsideWeatherproofReadings,
                 layout::insideWeatherproofText,
                 &Readings::insideWeatherproof);
    auto made = std::move(maker).finish();
    std::move(made.begin(), made.end(), std::back_inserter(fields));
}

void addAmendments(std::vector<Field>& fields, const BuiltLayout& built) {
    using layout::Amendments;
    FieldMaker<Amendments> maker(built.layout,
                                 built.layout.amendments,
                                 [](Layout& one) -> Amendments& { return one.amendments; });
    maker.group("Local amendments");
    maker.whose("the local authority");
    maker.number("conductor fill", "Conductor fill (%)", "%", &Amendments::conductorFillPercent);
    maker.number("splice fill", "Fill with blocks (%)", "%", &Amendments::spliceFillPercent);
    maker.number(
        "bend radius", "Bend radius (diameters)", "diameters", &Amendments::bendRadiusMultiple);
    maker.text("amendment source", "By", &Amendments::source);
    auto made = std::move(maker).finish();
    std::move(made.begin(), made.end(), std::back_inserter(fields));
}

void addTitleBlock(std::vector<Field>& fields, const BuiltLayout& built) {
    FieldMaker<Layout> maker(
        built.layout, built.layout, [](Layout& one) -> Layout& { return one; });
    maker.group("Title block");
    maker.whose("the layout");
    maker.text("title", "Title", &Layout::title);
    maker.text("project", "Project", &Layout::project);
    maker.text("drawn by", "Drawn by", &Layout::drawnBy);
    maker.text("date", "Date", &Layout::date);
    maker.text("revision", "Revision", &Layout::revision);
    maker.group("Standard and units");
    maker.choice(
        "edition",
        "NFPA 70 edition",
        [] { return kEditions; },
        standards::editionText,
        &Layout::edition);
    maker.choice(
        "display unit", "Shown in", [] { return kUnits; }, unitText, &Layout::displayUnit);
    auto made = std::move(maker).finish();
    std::move(made.begin(), made.end(), std::back_inserter(fields));
}

}  // namespace

std::vector<Field> gutterFields(const BuiltLayout& built) {
    std::vector<Field> fields;
    addGutter(fields, built);
    addSurroundings(fields, built);
    addTitleBlock(fields, built);
    addAmendments(fields, built);
    addAuthority(fields, built);
    return fields;
}

}  // namespace gw::editing

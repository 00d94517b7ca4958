#include <algorithm>

#include "editing/field_forms.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Layout;
using layout::System;

namespace {

std::string phasesText(const std::vector<layout::Phase>& phases) {
    std::string text;
    for (const layout::Phase phase : phases) {
        text += (text.empty() ? "" : " ") + std::string(layout::phaseText(phase));
    }
    return text;
}

/// "A B C N", "ABCN", "A, B, C, N": letters in any order.
Result<std::vector<layout::Phase>> readPhases(std::string_view typed) {
    std::vector<layout::Phase> phases;
    for (const char c : typed) {
        if (c == ' ' || c == ',' || c == '\t') {
            continue;
        }
        const std::string letter(1, static_cast<char>(std::toupper(static_cast<unsigned char>(c))));
        const auto phase = layout::phaseFromText(letter);
        if (!phase) {
            return fail({ErrorCode::syntax,
                         "not phases",
                         {},
                         {},
                         "letters out of A, B, C, N, G",
                         std::string(trimmed(typed))});
        }
        phases.push_back(*phase);
    }
    return phases;
}

void addSystemChoice(FieldMaker<Circuit>& maker, const BuiltLayout& built, const Circuit& now) {
    const auto names = distinctNames(built.layout, built.layout.systems);
    const auto index = indexOf(built.layout, now.system);
    Field& field = maker.add("system", "System", FieldKind::choice, index ? names[*index] : "");
    field.choices = [names] { return names; };
    field.write = [id = now.id, names](Layout& layout, std::string_view typed) -> Result<void> {
        const auto chosen = namedIn(layout, layout.systems, trimmed(typed));
        if (!chosen) {
            return fail(notOneOf(typed, names));
        }
        layout.circuits[*indexOf(layout, id)].system = layout.systems[*chosen].id;
        return {};
    };
}

void addJoins(FieldMaker<Circuit>& maker, const BuiltLayout& built, const Circuit& now) {
    const auto names = distinctNames(built.layout, built.layout.circuits);
    const auto index = now.joins ? indexOf(built.layout, *now.joins) : std::nullopt;
    Field& field = maker.add("joins", "Tapped from", FieldKind::choice, index ? names[*index] : "");
    field.mayBeOpen = true;
    auto others = names;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(*indexOf(built.layout, now.id)));
    field.choices = [others] { return others; };
    field.write = [id = now.id, others](Layout& layout, std::string_view typed) -> Result<void> {
        auto& circuit = layout.circuits[*indexOf(layout, id)];
        if (saysNothing(typed)) {
            circuit.joins.reset();
            return {};
        }
        const auto chosen = namedIn(layout, layout.circuits, trimmed(typed));
        if (!chosen) {
            return fail(notOneOf(typed, others));
        }
        circuit.joins = layout.circuits[*chosen].id;
        return {};
    };
}

}  // namespace

std::vector<Field> systemFields(const BuiltLayout& built, const layout::SystemId& id) {
    const System& now = built.layout.systems[*indexOf(built.layout, id)];
    FieldMaker<System> maker(built.layout, now, [id](Layout& layout) -> System& {
        return layout.systems[*indexOf(layout, id)];
    });
    maker.group("System");
    maker.text("name", "Name", &System::name);
    maker.count("volts", "Between phases (V)", "V", &System::voltsBetweenPhases);
    maker.count("volts to ground", "To ground (V)", "V", &System::voltsToGround);
    maker.number("fault current", "Fault current (kA)", "kA", &System::faultKiloamperes);
    return std::move(maker).finish();
}

std::vector<Field> circuitFields(const BuiltLayout& built, const layout::CircuitId& id) {
    const Circuit& now = built.layout.circuits[*indexOf(built.layout, id)];
    FieldMaker<Circuit> maker(built.layout, now, [id](Layout& layout) -> Circuit& {
        return layout.circuits[*indexOf(layout, id)];
    });
    maker.group("Circuit");
    maker.text("name", "Name", &Circuit::name);
    maker.choice("role", "Role", layout::allRoles, layout::roleText, &Circuit::role);
    addSystemChoice(maker, built, now);
    maker.count("sets", "Sets in parallel", &Circuit::sets);
    maker.add("phases", "Phases", FieldKind::text, phasesText(now.phases)).write =
        [id](Layout& layout, std::string_view typed) -> Result<void> {
        auto phases = readPhases(typed);
        if (!phases) {
            return fail(phases.error());
        }
        layout.circuits[*indexOf(layout, id)].phases = std::move(*phases);
        return {};
    };
    addJoins(maker, built, now);
    maker.group("Protection and load");
    maker.number("device", "Overcurrent device (A)", "A", &Circuit::deviceAmperes);
    maker.number("load", "Calculated load (A)", "A", &Circuit::loadAmperes);
    maker.choice(
        "tap rule", "Tap rule", layout::allTapRules, layout::tapRuleText, &Circuit::tapRule);
    maker.truth("bonds neutral", "Bonds N to G on purpose", &Circuit::bondsNeutral);
    maker.text("supplies", "Supplies", &Circuit::supplies);
    return std::move(maker).finish();
}

}  // namespace gw::editing

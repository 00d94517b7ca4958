#include "takeoff/takeoff.h"

#include <array>

#include "base/contract.h"
#include "checks/report.h"
#include "takeoff/bend_marks.h"
#include "takeoff/holes.h"
#include "takeoff/labels.h"
#include "takeoff/landing_steps.h"
#include "takeoff/materials.h"
#include "takeoff/strip_and_torque.h"
#include "takeoff/weights.h"

namespace gw::takeoff {
namespace {

constexpr std::array<std::string_view, 9> kNames = {"cut-list",
                                                    "reels",
                                                    "bend-marks",
                                                    "strip-and-torque",
                                                    "landing-order",
                                                    "holes",
                                                    "materials",
                                                    "labels",
                                                    "weights"};

}  // namespace

std::span<const std::string_view> tableNames() {
    return kNames;
}

Table tableNamed(std::string_view name,
                 const geometry::BuiltLayout& built,
                 const CutOptions& options) {
    const std::array<Table (*)(const geometry::BuiltLayout&, const CutOptions&), kNames.size()>
        makers = {cutListTable,
                  reelTable,
                  [](const auto& all, const auto&) { return bendMarkTable(all); },
                  [](const auto& all, const auto&) { return stripAndTorqueTable(all); },
                  [](const auto& all, const auto&) { return landingTable(all); },
                  [](const auto& all, const auto&) { return holeTable(all); },
                  materialTable,
                  [](const auto& all, const auto&) { return labelTable(all); },
                  [](const auto& all, const auto&) { return weightTable(all); }};
    for (std::size_t i = 0; i < kNames.size(); ++i) {
        if (kNames.at(i) == name) {
            return makers.at(i)(built, options);
        }
    }
    CONTRACT(false);
    return {};
}

std::string textTakeoff(const std::vector<Table>& tables, const layout::Layout& layout) {
    std::string text = "Takeoff of " + layout.title + "\n";
    for (const auto& table : tables) {
        text += '\n' + toText(table, layout.displayUnit);
    }
    text += '\n';
    for (const auto& caution : checks::cautions()) {
        text += caution + '\n';
    }
    return text;
}

std::string jsonTakeoff(const std::vector<Table>& tables, const layout::Layout& layout) {
    auto all = JsonTree::array();
    for (const auto& table : tables) {
        all.push(toJson(table));
    }
    auto cautions = JsonTree::array();
    for (const auto& caution : checks::cautions()) {
        cautions.push(caution);
    }
    auto takeoff = JsonTree::object();
    takeoff.set("format", "gutterwright-takeoff").set("version", 1).set("title", layout.title);
    takeoff.set("tables", std::move(all)).set("cautions", std::move(cautions));
    return takeoff.text();
}

}  // namespace gw::takeoff

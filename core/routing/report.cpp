#include <numbers>

#include "base/json_writer.h"
#include "checks/support.h"
#include "routing/routing.h"
#include "units/length.h"

namespace gw::routing {
namespace {

double rounded(double value) {
    return std::round(value * 1e4) / 1e4;
}

std::string degreesText(double radians) {
    return checks::toText(checks::degrees(radians));
}

std::string ratioText(double length, double bound) {
    return units::formatDecimal(bound > 0.0 ? length / bound : 1.0, 3);
}

std::string padded(std::string text, std::size_t width) {
    text.resize(std::max(width, text.size()), ' ');
    return text;
}

std::string headOf(const Routing& routing, const std::string& file) {
    const std::size_t asked = routing.routed.size() + routing.unresolved.size();
    std::string text = file.empty() ? "" : file + "\n";
    text += std::to_string(routing.routed.size()) + " of " +
            checks::counted(asked, "conductor", "conductors") + " routed";
    text += routing.stopped ? ", stopped.\n" : ".\n";
    return text;
}

std::string lineOf(const Routed& one) {
    return "  " + padded(one.conductor.text(), 12) + padded(checks::inText(one.length), 12) +
           padded(checks::counted(one.bends, "bend", "bends"), 9) +
           padded(degreesText(one.turn), 10) + "straight line " +
           padded(checks::inText(one.straightLine), 12) + "alone " + checks::inText(one.alone) +
           "\n";
}

std::string sumOf(const Routing& routing) {
    double length = 0.0;
    double straight = 0.0;
    double alone = 0.0;
    for (const Routed& one : routing.routed) {
        length += one.length;
        straight += one.straightLine;
        alone += one.alone;
    }
    if (routing.routed.empty()) {
        return {};
    }
    return "  all         " + checks::inText(length) + ", " + ratioText(length, straight) +
           " of the straight lines, " + ratioText(length, alone) + " of the shortest ways alone\n";
}

JsonTree jsonOf(const Routed& one) {
    auto tree = JsonTree::object();
    tree.set("conductor", one.conductor.text()).set("length", rounded(one.length));
    tree.set("bends", static_cast<int>(one.bends));
    tree.set("turnDegrees", rounded(one.turn * 180.0 / std::numbers::pi));
    tree.set("straightLine", rounded(one.straightLine)).set("alone", rounded(one.alone));
    return tree;
}

JsonTree jsonOf(const Unresolved& one) {
    auto tree = JsonTree::object();
    tree.set("conductor", one.conductor.text()).set("why", whyText(one.why));
    tree.set("sentence", one.sentence);
    if (one.place) {
        auto place = JsonTree::object();
        place.set("x", one.place->x).set("y", one.place->y).set("z", one.place->z);
        tree.set("place", std::move(place));
    }
    if (one.needed && one.free) {
        tree.set("needed", *one.needed).set("free", *one.free);
    }
    return tree;
}

JsonTree jsonOf(const checks::Finding& finding) {
    auto tree = JsonTree::object();
    tree.set("check", checks::checkName(finding.check)).set("working", finding.working);
    return tree;
}

}  // namespace

std::string_view whyText(Unresolved::Why why) {
    switch (why) {
        case Unresolved::Why::provenImpossible:
            return "proven impossible";
        case Unresolved::Why::notFound:
            return "not found";
        case Unresolved::Why::stopped:
            return "stopped";
    }
    return {};
}

std::string textReport(const Routing& routing, const std::string& file) {
    std::string text = headOf(routing, file);
    for (const Routed& one : routing.routed) {
        text += lineOf(one);
    }
    text += sumOf(routing);
    for (const Unresolved& one : routing.unresolved) {
        text += "\n" + one.conductor.text() + " " + std::string(whyText(one.why)) + ": " +
                one.sentence + ".\n";
    }
    for (const auto& finding : routing.breaches) {
        text += "\nBREACH " + std::string(checks::checkTitle(finding.check)) + ": " +
                finding.working + "\n";
    }
    return text;
}

std::string jsonReport(const Routing& routing, const std::string& file) {
    auto tree = JsonTree::object();
    tree.set("format", "gutterwright-routing").set("version", 1).set("file", file);
    tree.set("complete", routing.answer.has_value()).set("stopped", routing.stopped);
    auto routed = JsonTree::array();
    for (const Routed& one : routing.routed) {
        routed.push(jsonOf(one));
    }
    auto unresolved = JsonTree::array();
    for (const Unresolved& one : routing.unresolved) {
        unresolved.push(jsonOf(one));
    }
    auto breaches = JsonTree::array();
    for (const auto& finding : routing.breaches) {
        breaches.push(jsonOf(finding));
    }
    auto rounds = JsonTree::array();
    for (const std::size_t conflicts : routing.conflictsByRound) {
        rounds.push(static_cast<int>(conflicts));
    }
    tree.set("routed", std::move(routed)).set("unresolved", std::move(unresolved));
    tree.set("breaches", std::move(breaches)).set("conflictsByRound", std::move(rounds));
    return tree.text();
}

}  // namespace gw::routing

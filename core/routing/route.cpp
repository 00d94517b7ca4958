#include <algorithm>
#include <map>
#include <numeric>

#include "checks/facts.h"
#include "routing/negotiation.h"
#include "routing/reasons.h"
#include "routing/routing.h"

namespace gw::routing {
namespace {

using geometry::BuiltLayout;
using layout::Conductor;
using layout::ConductorId;
using layout::Layout;

/// What paths are judged by: what a path can break, then what shows how full the gutter is.
const std::vector<checks::Check> kOfPaths = {checks::Check::clearance, checks::Check::bendRadius};
const std::vector<checks::Check> kOfSpace = {checks::Check::conductorFill,
                                             checks::Check::spliceFill,
                                             checks::Check::entryBendingSpace,
                                             checks::Check::terminalBendingSpace,
                                             checks::Check::clearance,
                                             checks::Check::bendRadius};

std::vector<std::size_t> byId(const Layout& layout) {
    std::vector<std::size_t> order(layout.conductors.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return layout.conductors[a].id < layout.conductors[b].id;
    });
    return order;
}

class Router {
public:
    Router(const Layout& layout, const parts::Shelf& shelf, const Options& options)
        : shelf_(shelf), options_(options), stripped_(layout), asked_(layout.conductors.size(), 1) {
        if (!options.only.empty()) {
            for (std::size_t i = 0; i < asked_.size(); ++i) {
                asked_[i] = isNamed(layout.conductors[i].id) ? 1 : 0;
            }
        }
        for (std::size_t i = 0; i < asked_.size(); ++i) {
            if (asked_[i] != 0) {
                stripped_.conductors[i].corners.clear();
            }
        }
        routing_.partial = layout;
        unresolved_.resize(asked_.size());
        alone_.assign(asked_.size(), 0.0);
        progress_.asked =
            static_cast<std::size_t>(std::count(asked_.begin(), asked_.end(), char{1}));
    }

    Routing run() {
        built_ = geometry::build(stripped_, shelf_);
        order_ = byId(stripped_);
        lookAround();
        collectWays();
        if (!routing_.stopped) {
            negotiate();
        }
        markStopped();
        judge();
        return std::move(routing_);
    }

private:
    bool isNamed(const ConductorId& id) const {
        return std::find(options_.only.begin(), options_.only.end(), id) != options_.only.end();
    }
    bool goOn() {
        if (!routing_.stopped && options_.onProgress && !options_.onProgress(progress_)) {
            routing_.stopped = true;
        }
        return !routing_.stopped;
    }

    // ---- what stays -------------------------------------------------------------------------

    void lookAround() {
        around_.inside = built_.gutter().inside;
        for (const auto& block : built_.blocks) {
            around_.bodies.push_back(block.body);
        }
        double thickest = 0.0;
        for (const std::size_t i : order_) {
            if (asked_[i] != 0) {
                thickest = std::max(thickest, built_.conductors[i].diameter.in());
            } else {
                fix(i);
            }
        }
        constexpr double kBetweenLanes = 0.02;
        around_.pitch = std::max(thickest + kBetweenLanes, 0.25);
        keepScrewsFree();
    }

    void fix(std::size_t index) {
        const auto& conductor = built_.conductors[index];
        std::vector<double> cuts{conductor.from.mouthAt};
        std::vector<Terminal> terminals{terminalAt(conductor.from)};
        for (const auto& pass : conductor.passes) {
            const auto [first, last] = std::minmax(pass.nearAt, pass.farAt);
            cuts.insert(cuts.end(), {first, last});
            Terminal terminal;
            terminal.block = pass.block;
            terminal.port = pass.port;
            terminals.insert(terminals.end(), {terminal, terminal});
        }
        cuts.push_back(conductor.to.mouthAt);
        terminals.push_back(terminalAt(conductor.to));
        for (std::size_t k = 0; k + 1 < cuts.size(); k += 2) {
            if (cuts[k + 1] > cuts[k]) {
                auto fixed = std::make_unique<Fixed>();
                fixed->ribbon =
                    ribbonOf(conductor.built.path, cuts[k], cuts[k + 1], conductor.radius());
                fixed->conductor = index;
                fixed->start = terminals[k];
                fixed->end = terminals[k + 1];
                placeTerminal(fixed->start, fixed->ribbon, true);
                placeTerminal(fixed->end, fixed->ribbon, false);
                around_.fixed.push_back(std::move(fixed));
            }
        }
    }

    static Terminal terminalAt(const geometry::BuiltEnd& end) {
        Terminal terminal;
        terminal.entry = end.entry;
        terminal.block = end.block;
        terminal.port = end.port;
        return terminal;
    }
    static void placeTerminal(Terminal& terminal, const Ribbon& ribbon, bool start) {
        const double at = start ? ribbon.from : ribbon.to;
        terminal.mouth = ribbon.path->pointAt(at);
        terminal.axis = ribbon.path->tangentAt(at) * (start ? 1.0 : -1.0);
    }

    void keepScrewsFree() {
        const auto corridors = checks::corridorsOf(built_, checks::Occupancy(built_));
        const std::vector<geometry::CornerInput> none;
        for (const auto& ofBlock : corridors) {
            for (const auto& one : ofBlock) {
                const Vec3 head = built_.blocks[one.block].screws[one.screw].head;
                const double depth = built_.gutter().inside.z;
                if (!one.facesCover || !one.diameter || head.z > depth - 0.1) {
                    continue;
                }
                Corridor corridor;
                corridor.block = one.block;
                corridor.radius = *one.diameter / 2.0;
                // Half a radius off: its end counts as round.
                const Vec3 from{head.x, head.y, std::min(head.z + corridor.radius, depth - 0.05)};
                corridor.path = geometry::buildPath(from, none, {head.x, head.y, depth}).path;
                around_.corridors.push_back(std::move(corridor));
            }
        }
        for (const Corridor& corridor : around_.corridors) {
            around_.corridorRibbons.push_back(
                ribbonOf(corridor.path, 0.0, corridor.path.length().in(), corridor.radius));
        }
    }

    // ---- ways -------------------------------------------------------------------------------

    void collectWays() {
        for (const std::size_t i : order_) {
            if (asked_[i] == 0) {
                continue;
            }
            if (!goOn()) {
                return;
            }
            collectWaysOf(i);
            ++progress_.prepared;
        }
        goOn();
    }

    void collectWaysOf(std::size_t index) {
        std::vector<Item> own;
        const auto spans = spansOf(built_, index);
        alone_[index] = straightLineOf(built_, index, {});
        for (const Span& span : spans) {
            Item item{span, {}};
            if (auto proven = provenImpossible(built_, span)) {
                unresolved_[index] = std::move(proven);
                return;
            }
            item.ways = waysOf(span, around_, [this] { return goOn(); });
            if (routing_.stopped) {
                return;
            }
            if (item.ways.ways.empty()) {
                unresolved_[index] = noWay(built_, item);
                return;
            }
            alone_[index] += shortestOf(item.ways);
            own.push_back(std::move(item));
        }
        std::move(own.begin(), own.end(), std::back_inserter(items_));
    }

    static double shortestOf(const Ways& ways) {
        double least = ways.ways.front()->length;
        for (const auto& way : ways.ways) {
            least = std::min(least, way->length);
        }
        return least;
    }

    // ---- who takes which --------------------------------------------------------------------

    void negotiate() {
        const OnRound onRound = [this](std::size_t round, std::size_t conflicts) {
            if (round > 0) {
                progress_.round = round;
                progress_.conflicts = conflicts;
            }
            return goOn();
        };
        const Settled settled = settle(items_, around_, options_.mostRounds, onRound);
        routing_.conflictsByRound = settled.conflictsByRound;
        if (routing_.stopped) {
            return;
        }
        for (std::size_t k = 0; k < items_.size(); ++k) {
            const std::size_t index = items_[k].span.conductor;
            if (settled.chosen[k] == kNone && !unresolved_[index]) {
                unresolved_[index] =
                    noRoom(built_, items_, settled.chosen, k, settled.conflictsByRound.size());
            }
        }
        for (std::size_t k = 0; k < items_.size(); ++k) {
            lay(items_[k], settled.chosen[k]);
        }
    }

    /// Spans of a conductor come in order.
    void lay(const Item& item, std::size_t chosen) {
        const std::size_t index = item.span.conductor;
        if (unresolved_[index]) {
            return;
        }
        const Way& way = *item.ways.ways[chosen];
        auto& conductor = routing_.partial.conductors[index];
        if (item.span.number == 0) {
            conductor.corners.clear();
            stateMouth(item.span.starts[way.start]);
        }
        for (const Vec3& corner : way.corners) {
            conductor.corners.push_back({corner, units::Inches::of(item.span.bend)});
        }
        if (item.span.number == built_.conductors[index].passes.size()) {
            stateMouth(item.span.ends[way.end]);
        }
    }

    /// Where either mouth can be opened and none is stated, the one that the path uses.
    void stateMouth(const Terminal& terminal) {
        if (!terminal.block) {
            return;
        }
        auto& block = routing_.partial.blocks[*terminal.block];
        const auto& port = built_.blocks[*terminal.block].part->ports[*terminal.port];
        const bool stated = std::any_of(block.openMouths.begin(),
                                        block.openMouths.end(),
                                        [&](const auto& open) { return open.port == port.name; });
        if (port.opening == parts::PortOpening::either && !stated) {
            const auto& bore = built_.blocks[*terminal.block].ports[*terminal.port];
            block.openMouths.push_back(
                {port.name, distance(terminal.mouth, bore.mouth) < kSameMouth});
        }
    }
    static constexpr double kSameMouth = 1e-6;

    void markStopped() {
        for (std::size_t i = 0; i < asked_.size(); ++i) {
            if (routing_.stopped && asked_[i] != 0 && !unresolved_[i]) {
                Unresolved one;
                one.conductor = stripped_.conductors[i].id;
                one.why = Unresolved::Why::stopped;
                one.sentence = "stopped before a way was settled";
                unresolved_[i] = std::move(one);
            }
        }
    }

    // ---- the judgement ----------------------------------------------------------------------

    std::optional<std::size_t> indexOf(const checks::Subject& subject) const {
        const auto* id = std::get_if<ConductorId>(&subject);
        for (std::size_t i = 0; id != nullptr && i < stripped_.conductors.size(); ++i) {
            if (stripped_.conductors[i].id == *id) {
                return i;
            }
        }
        return std::nullopt;
    }

    /// A conductor that was routed and that this breach names, where it names none that was not.
    std::optional<std::size_t> toBlame(const checks::Finding& finding) const {
        std::optional<std::size_t> found;
        for (const auto& subject : finding.subjects) {
            const auto index = indexOf(subject);
            if (index && unresolved_[*index]) {
                return std::nullopt;
            }
            if (index && asked_[*index] != 0) {
                found = index;
            }
        }
        return finding.verdict == checks::Verdict::breach ? found : std::nullopt;
    }

    /// The checks have the last word: what they find against a path takes it away.
    void judge() {
        BuiltLayout built = geometry::build(routing_.partial, shelf_);
        for (std::size_t pass = 0; pass <= asked_.size() && takeAway(built); ++pass) {
            built = geometry::build(routing_.partial, shelf_);
        }
        bool all = true;
        for (const std::size_t i : order_) {
            if (asked_[i] == 0) {
                continue;
            }
            if (unresolved_[i]) {
                routing_.unresolved.push_back(*unresolved_[i]);
                all = false;
            } else {
                routing_.routed.push_back(routed(built, i));
            }
        }
        for (auto& finding : checks::runChecks(built, kOfSpace)) {
            if (finding.verdict == checks::Verdict::breach && !namesUnresolved(finding)) {
                routing_.breaches.push_back(std::move(finding));
            }
        }
        if (all) {
            routing_.answer = routing_.partial;
        }
    }

    bool namesUnresolved(const checks::Finding& finding) const {
        return std::any_of(
            finding.subjects.begin(), finding.subjects.end(), [&](const auto& subject) {
                const auto index = indexOf(subject);
                return index && unresolved_[*index];
            });
    }

    bool takeAway(const BuiltLayout& built) {
        for (const auto& finding : checks::runChecks(built, kOfPaths)) {
            if (const auto index = toBlame(finding)) {
                Unresolved one;
                one.conductor = stripped_.conductors[*index].id;
                one.sentence = "the way found does not pass the checks: " + finding.working;
                one.place = finding.place;
                unresolved_[*index] = std::move(one);
                return true;
            }
        }
        return false;
    }

    Routed routed(const BuiltLayout& built, std::size_t index) const {
        const auto& conductor = built.conductors[index];
        Routed routed;
        routed.conductor = built.layout.conductors[index].id;
        routed.length = conductor.built.path.length().in();
        for (const auto& bend : conductor.built.bends) {
            routed.bends += bend.turn > 1e-6 ? 1 : 0;
            routed.turn += bend.turn;
        }
        routed.straightLine = straightLineOf(built_, index, spansOf(built_, index));
        routed.alone = alone_[index];
        return routed;
    }

    const parts::Shelf& shelf_;
    const Options& options_;
    Layout stripped_;
    std::vector<char> asked_;
    BuiltLayout built_;  ///< of the stripped layout
    std::vector<std::size_t> order_;
    Surroundings around_;
    std::vector<Item> items_;
    std::vector<double> alone_;  ///< by conductor: what is in bores, and the shortest ways
    std::vector<std::optional<Unresolved>> unresolved_;
    Progress progress_;
    Routing routing_;
};

}  // namespace

Result<Routing> route(const Layout& layout, const parts::Shelf& shelf, const Options& options) {
    if (const auto valid = layout::validate(layout, shelf); !valid) {
        return fail(valid.error());
    }
    for (const ConductorId& id : options.only) {
        const bool there = std::any_of(layout.conductors.begin(),
                                       layout.conductors.end(),
                                       [&](const Conductor& one) { return one.id == id; });
        if (!there) {
            return fail({ErrorCode::dangling,
                         "no such conductor",
                         {},
                         {},
                         "the id of a conductor of the layout",
                         id.text()});
        }
    }
    return Router(layout, shelf, options).run();
}

}  // namespace gw::routing

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "base/contract.h"
#include "base/tolerance.h"
#include "checks/bending_need.h"
#include "checks/entry_users.h"
#include "checks/support.h"
#include "checks/units.h"
#include "standards/tables.h"

/// Large conductors that are pulled uncut through the gutter, in by one entry and out by another:
/// whether the entries are far enough apart. Inspectors differ on whether the gutter also has to be
/// as long, high and deep as a pull box.
namespace gw::checks {
namespace {

using geometry::BuiltEnd;
using geometry::BuiltLayout;
using layout::Wall;
using standards::Rule;
using standards::TradeSize;

// Multiples of the trade size. Source: NFPA 70 314.28(A)(1) and (A)(2), alike in all editions.
constexpr double kStraightMultiple = 8.0;
constexpr double kAngleMultiple = 6.0;

// ---- who is pulled from where to where ------------------------------------------------------

struct Pull {
    std::size_t from = 0;  ///< entries, from < to
    std::size_t to = 0;
    std::vector<std::size_t> conductors;  ///< by id
};

/// From one entry to later ones, in the order of these.
std::vector<Pull> pullsFrom(const BuiltLayout& built, const Links& links, std::size_t entry) {
    std::map<std::size_t, std::vector<std::size_t>> byOther;
    for (const std::size_t i : links.atEntries[entry]) {
        const auto& [from, to] =
            std::minmax(built.conductors[i].from.entry, built.conductors[i].to.entry);
        const bool uncut = from && from == entry && to > from;
        if (uncut && isLargeInsulated(built.layout.conductors[i])) {
            byOther[given(to)].push_back(i);
        }
    }
    std::vector<Pull> pulls;
    for (auto& [other, conductors] : byOther) {
        links.sortById(conductors);
        pulls.push_back({entry, other, std::move(conductors)});
    }
    return pulls;
}

const layout::Entry& entryAt(const BuiltLayout& built, std::size_t entry) {
    return built.layout.entries[entry];
}

/// Out by the wall that faces the one they came in by. The back faces the cover.
bool isStraight(const BuiltLayout& built, const Pull& pull) {
    const Vec3 first = layout::inwardNormal(entryAt(built, pull.from).wall);
    const Vec3 second = layout::inwardNormal(entryAt(built, pull.to).wall);
    return dot(first, second) < -0.5;
}

std::string pullText(const BuiltLayout& built, const Pull& pull) {
    return counted(pull.conductors.size(), "conductor goes", "conductors go") + " uncut from " +
           entryName(built, pull.from) + " to " + entryName(built, pull.to) + ", " +
           (isStraight(built, pull) ? "a straight pull" : "an angle pull");
}

// ---- how far apart the entries are ----------------------------------------------------------

/// How wide a raceway is where it meets the gutter, inches.
struct Width {
    double across = 0.0;
    bool outside = true;  ///< else the bore: the outside diameter is not published
};

std::optional<Width> widthOf(const BuiltLayout& built, std::size_t entry) {
    const auto& one = entryAt(built, entry);
    if (!one.raceway || !one.tradeSize) {
        return std::nullopt;
    }
    const auto found =
        standards::racewayDimensions(*one.raceway, *one.tradeSize, built.layout.edition);
    if (!found) {
        return std::nullopt;
    }
    const auto& outside = found->value.outsideDiameter;
    return Width{outside.value_or(found->value.insideDiameter).in(), outside.has_value()};
}

std::vector<std::string> missingOf(const BuiltLayout& built, std::size_t entry) {
    const auto& one = entryAt(built, entry);
    std::vector<std::string> missing;
    if (!one.tradeSize) {
        missing.push_back("trade size of the raceway at " + entryName(built, entry));
    }
    if (!one.raceway) {
        missing.push_back("type of the raceway at " + entryName(built, entry));
    }
    if (missing.empty() && !widthOf(built, entry)) {
        missing.push_back("diameter of the raceway at " + entryName(built, entry));
    }
    return missing;
}

struct Disc {
    Vec3 centre;
    Vec3 axis;
    double radius = 0.0;

    Vec3 nearestTo(const Vec3& point) const {
        const Vec3 offset = point - centre;
        const Vec3 inPlane = offset - axis * dot(offset, axis);
        const double aside = norm(inPlane);
        return aside <= radius ? centre + inPlane : centre + inPlane * (radius / aside);
    }
};

/// Edge to edge in a straight line, by projecting to and fro: at once for discs in one plane or in
/// parallel planes, else each round comes nearer (discs are convex). Error below kSamePoint.
double distanceBetween(const Disc& a, const Disc& b) {
    constexpr int kMostRounds = 1000;
    Vec3 onA = a.nearestTo(b.centre);
    Vec3 onB = b.nearestTo(onA);
    for (int round = 0; round < kMostRounds; ++round) {
        const Vec3 next = a.nearestTo(onB);
        const bool settled = distance(next, onA) < kSamePoint / kMostRounds;
        onA = next;
        onB = b.nearestTo(onA);
        if (settled) {
            break;
        }
    }
    return distance(onA, onB);
}

double distanceApart(const BuiltLayout& built, const Pull& pull) {
    const auto disc = [&](std::size_t entry) {
        const auto& one = built.entries[entry];
        return Disc{one.centre, one.axis, given(widthOf(built, entry)).across / 2.0};
    };
    return distanceBetween(disc(pull.from), disc(pull.to));
}

/// "between the outsides of the raceways", or what stands for them.
std::string edgesText(const BuiltLayout& built, const Pull& pull) {
    std::vector<std::string> byBore;
    for (const std::size_t entry : {pull.from, pull.to}) {
        if (!given(widthOf(built, entry)).outside) {
            byBore.push_back(entryName(built, entry));
        }
    }
    return "between the edges of the raceways" +
           (byBore.empty() ? "" : " (the bore at " + listed(byBore) + ")");
}

// ---- what is asked --------------------------------------------------------------------------

/// One distance against what is asked of it.
struct Judged {
    double measured = 0.0;
    std::optional<double> asked;  ///< empty: nothing, or not known
    Verdict verdict = Verdict::meets;
    std::string text{};
    std::vector<std::string> missing{};
};

bool isWorse(const Judged& a, const Judged& b) {
    if (a.verdict != b.verdict) {
        return gravity(a.verdict) > gravity(b.verdict);
    }
    return a.measured - a.asked.value_or(0.0) < b.measured - b.asked.value_or(0.0);
}

TradeSize largerSize(const BuiltLayout& built, const Pull& pull) {
    return std::max(given(entryAt(built, pull.from).tradeSize),
                    given(entryAt(built, pull.to).tradeSize));
}

double multipleFor(bool straight) {
    return straight ? kStraightMultiple : kAngleMultiple;
}

std::string productText(double multiple, TradeSize size) {
    return units::formatDecimal(multiple, 0) + " x " + std::string(size.text()) + " in";
}

Judged ofLengths(double measured, double asked, const std::string& what, const std::string& sum) {
    const auto [is, shouldBe] = inTexts(measured, asked);
    return {measured,
            asked,
            atLeast(measured, asked) ? Verdict::meets : Verdict::breach,
            is + " " + what + ", where " + sum + " = " + shouldBe + " is needed"};
}

/// The first reading: the entries are as far apart as those of a box.
Judged betweenEntries(const BuiltLayout& built, const Pull& pull) {
    const double multiple = multipleFor(isStraight(built, pull));
    const TradeSize size = largerSize(built, pull);
    return ofLengths(distanceApart(built, pull),
                     multiple * size.nominal(),
                     edgesText(built, pull),
                     productText(multiple, size));
}

/// From an entry's wall to the opposite one, or from the back to the cover.
double acrossFrom(const BuiltLayout& built, std::size_t entry) {
    return std::abs(dot(built.gutter().inside, layout::inwardNormal(entryAt(built, entry).wall)));
}

std::string acrossText(const BuiltLayout& built, std::size_t entry) {
    return "from the " + std::string(layout::wallText(entryAt(built, entry).wall)) +
           " wall to the opposite one";
}

/// A straight pull through a box: its length.
Judged lengthOfBox(const BuiltLayout& built, const Pull& pull) {
    const TradeSize size = largerSize(built, pull);
    return ofLengths(acrossFrom(built, pull.from),
                     kStraightMultiple * size.nominal(),
                     acrossText(built, pull.from),
                     productText(kStraightMultiple, size));
}

/// Whether two entries of one wall are side by side at one depth.
bool inOneRow(const BuiltLayout& built, std::size_t a, std::size_t b) {
    const auto& first = entryAt(built, a);
    const auto& second = entryAt(built, b);
    const double reach = (built.entries[a].bore + built.entries[b].bore) / 2.0;
    return first.wall == second.wall && std::abs(first.v - second.v) < reach;
}

/// An angle pull through a box: from a wall with a row of entries to the opposite wall.
Judged acrossFromRow(const BuiltLayout& built, std::size_t entry) {
    TradeSize largest = given(entryAt(built, entry).tradeSize);
    double sum = 0.0;
    std::vector<std::string> missing;
    for (std::size_t other = 0; other < built.entries.size(); ++other) {
        if (!inOneRow(built, entry, other)) {
            continue;
        }
        if (const auto& size = entryAt(built, other).tradeSize) {
            largest = std::max(largest, *size);
            sum += size->nominal();
        } else {
            missing.push_back("trade size of the raceway at " + entryName(built, other));
        }
    }
    const double others = sum - largest.nominal();
    Judged judged = ofLengths(acrossFrom(built, entry),
                              kAngleMultiple * largest.nominal() + others,
                              acrossText(built, entry),
                              productText(kAngleMultiple, largest) +
                                  (others > 0.0 ? " + " + inText(others) + " of its row" : ""));
    if (!missing.empty() && judged.verdict == Verdict::meets) {  // they can only ask for more
        judged.verdict = Verdict::cannotTell;
        judged.missing = std::move(missing);
    }
    return judged;
}

/// The exception for the wall opposite the removable cover.
Judged backToCover(const BuiltLayout& built, const Pull& pull) {
    const double depth = built.gutter().inside.z;
    SpaceNeed most = needByTableA(built, pull.conductors.front(), 1);
    for (const std::size_t i : pull.conductors) {
        const SpaceNeed need = needByTableA(built, i, 1);
        if (checks::isWorse(need, depth, most, depth)) {
            most = need;
        }
    }
    Judged judged{depth, {}, verdictOf(most, depth)};
    if (most.kind == SpaceNeed::Kind::space) {
        judged.asked = most.least;
    }
    if (judged.verdict == Verdict::cannotTell) {
        judged.missing = most.missing;
    }
    judged.text = inText(depth) + " from the back wall to the cover, where " + most.text;
    return judged;
}

/// The second reading: the gutter is as large as a box would have to be.
Judged asABox(const BuiltLayout& built, const Pull& pull, const Judged& entries) {
    if (isStraight(built, pull)) {
        return lengthOfBox(built, pull);
    }
    Judged worst = entries;
    for (const std::size_t entry : {pull.from, pull.to}) {
        Judged here = entryAt(built, entry).wall == Wall::back ? backToCover(built, pull)
                                                               : acrossFromRow(built, entry);
        if (isWorse(here, worst)) {
            worst = std::move(here);
        }
    }
    return worst;
}

// ---- the finding ----------------------------------------------------------------------------

Finding startOf(const BuiltLayout& built, const Pull& pull) {
    Finding finding;
    finding.check = Check::pullDistances;
    for (const std::size_t entry : {pull.from, pull.to}) {
        finding.subjects.emplace_back(entryAt(built, entry).id);
    }
    for (const std::size_t i : pull.conductors) {
        finding.subjects.emplace_back(built.layout.conductors[i].id);
    }
    finding.place = built.entries[pull.from].centre;
    finding.citation = sectionFor(built, Rule::pullDistances);
    return finding;
}

Finding notStated(const BuiltLayout& built, const Pull& pull, std::vector<std::string> missing) {
    Finding finding = startOf(built, pull);
    finding.verdict = Verdict::cannotTell;
    finding.working = sentence(pullText(built, pull) + "; what distance that needs cannot be told");
    finding.missing = std::move(missing);
    return finding;
}

Reading readingOf(const std::string& name, const Judged& judged) {
    Reading reading;
    reading.name = name;
    reading.verdict = judged.verdict;
    reading.measured = inches(judged.measured);
    if (judged.asked) {
        reading.limit = inches(*judged.asked);
    }
    reading.sentence = sentence("there are " + judged.text);
    return reading;
}

/// They may be bare, and then nothing is asked.
void excuseBare(Finding& finding, const BuiltLayout& built, const Pull& pull) {
    const auto unknown = insulationsMissing(built, pull.conductors);
    if (finding.verdict != Verdict::meets && unknown.size() == pull.conductors.size()) {
        finding.verdict = Verdict::cannotTell;
        finding.missing.insert(finding.missing.end(), unknown.begin(), unknown.end());
    }
}

Finding findingFor(const BuiltLayout& built, const Pull& pull) {
    auto missing = missingOf(built, pull.from);
    const auto more = missingOf(built, pull.to);
    missing.insert(missing.end(), more.begin(), more.end());
    if (!missing.empty()) {
        return notStated(built, pull, std::move(missing));
    }
    const Judged entries = betweenEntries(built, pull);
    const Judged box = asABox(built, pull, entries);
    const bool onlyBox = gravity(box.verdict) > gravity(entries.verdict);
    const Judged& shown = onlyBox ? box : entries;
    Finding finding = startOf(built, pull);
    finding.measured = inches(shown.measured);
    if (shown.asked) {
        judge(finding, inches(shown.measured), inches(*shown.asked), Bound::atLeast);
    }
    finding.verdict = entries.verdict;
    finding.missing = box.missing;
    finding.working =
        sentence(pullText(built, pull) + ": " +
                 (onlyBox ? "far enough apart, but judged as a pull box " : "") + shown.text);
    if (box.verdict != Verdict::meets) {
        finding.readings = {readingOf("only the distance between the entries", entries),
                            readingOf("the full dimensions of a pull box", box)};
        finding.verdict = settle(finding.readings);
    }
    excuseBare(finding, built, pull);
    return finding;
}

void ofEntry(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t entry) {
    for (const Pull& pull : pullsFrom(built, facts.links, entry)) {
        findings.push_back(findingFor(built, pull));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::entry, reads::kNothing, ofEntry}});

}  // namespace

std::span<const Section> pullDistancesSections() {
    return kSections;
}

std::vector<Finding> checkPullDistances(const BuiltLayout& built) {
    return runChecks(built, {Check::pullDistances});
}

}  // namespace gw::checks

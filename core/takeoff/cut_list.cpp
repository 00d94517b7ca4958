#include "takeoff/cut_list.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "base/contract.h"
#include "editing/fields.h"
#include "takeoff/words.h"

namespace gw::takeoff {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using units::Inches;

Inches allowanceFor(std::size_t bends) {
    return Inches::of(bends == 0 ? 0.5 : bends <= 2 ? 1.0 : 1.5);
}

Inches roundedUpToCut(Inches length) {
    constexpr double kPerInch = 8.0;  // a power of two: exact both ways
    return Inches::of(std::ceil(length.in() * kPerInch) / kPerInch);
}

std::optional<Inches> stripOf(const BuiltLayout& built,
                              const layout::End& end,
                              const BuiltEnd& at) {
    const auto* port = std::get_if<layout::InPort>(&end);
    if (port == nullptr) {
        return std::nullopt;
    }
    return port->strip ? port->strip : built.blocks[*at.block].part->ports[*at.port].stripLength;
}

namespace {

std::size_t bendsOf(const BuiltConductor& conductor) {
    const auto& bends = conductor.built.bends;
    return static_cast<std::size_t>(std::count_if(
        bends.begin(), bends.end(), [](const auto& bend) { return bend.turn > 0.0; }));
}

/// Of the raceways at both ends.
std::optional<Inches> beyondOf(const BuiltLayout& built, const BuiltConductor& conductor) {
    Inches all;
    for (const auto* end : {&conductor.from, &conductor.to}) {
        if (end->kind == BuiltEnd::Kind::entry) {
            const auto& length = built.layout.entries[*end->entry].racewayLength;
            if (!length) {
                return std::nullopt;
            }
            all = all + *length;
        }
    }
    return all;
}

std::vector<Window> windowsOf(const BuiltConductor& conductor) {
    std::vector<Window> windows;
    for (const auto& pass : conductor.passes) {
        if (pass.window) {
            const auto [first, last] = *pass.window;
            const bool along = pass.nearAt <= pass.farAt;
            const double from = along ? pass.nearAt + first : pass.nearAt - last;
            windows.push_back({Inches::of(from), Inches::of(last - first)});
        }
    }
    return windows;
}

CutLine lineOf(const BuiltLayout& built, std::size_t index, const CutOptions& options) {
    const auto& conductor = built.conductors[index];
    const auto& said = built.layout.conductors[index];
    CutLine line;
    line.conductor = index;
    line.inGutter = conductor.built.path.length();
    line.beyond = beyondOf(built, conductor);
    line.allowance = options.allowance.value_or(allowanceFor(bendsOf(conductor)));
    line.cut = roundedUpToCut(line.inGutter + line.beyond.value_or(Inches()) + line.allowance);
    line.stripFrom = stripOf(built, said.from, conductor.from);
    line.stripTo = stripOf(built, said.to, conductor.to);
    line.windows = windowsOf(conductor);
    return line;
}

using Parallel = std::tuple<std::string, layout::Phase>;
Parallel parallelOf(const layout::Conductor& conductor) {
    return {conductor.circuit.text(), conductor.phase};
}

/// Of one circuit's phase: one piece for each of several sets, all of known length, are parallel.
/// Two pieces of one set follow one another, and nothing is said then.
struct ParallelPieces {
    std::set<int> sets;
    std::size_t count = 0;
    bool known = true;
    Inches longest;
    bool areParallel() const { return known && count > 1 && sets.size() == count; }
};

/// Same length: NFPA 70 310.10(G)(2), 310.10(H)(2) in 2017.
void cutAlike(const BuiltLayout& built, std::vector<CutLine>& lines) {
    std::map<Parallel, ParallelPieces> phases;
    for (const auto& line : lines) {
        const auto& conductor = built.layout.conductors[line.conductor];
        auto& pieces = phases[parallelOf(conductor)];
        pieces.sets.insert(conductor.set);
        ++pieces.count;
        pieces.known = pieces.known && line.beyond.has_value();
        pieces.longest = std::max(pieces.longest, line.cut);
    }
    for (auto& line : lines) {
        const auto& pieces = phases[parallelOf(built.layout.conductors[line.conductor])];
        if (pieces.areParallel()) {
            line.cutAlike = pieces.longest;
        }
    }
}

std::string windowText(const std::vector<Window>& windows, units::LengthUnit unit) {
    std::string text;
    for (const auto& window : windows) {
        text += (text.empty() ? "" : "; ") + units::formatLength(window.length, unit) +
                " long from " + units::formatLength(window.from, unit);
    }
    return text;
}

std::string fromText(const BuiltLayout& built, const layout::Conductor& conductor, bool first) {
    return editing::endText(built.layout, first ? conductor.from : conductor.to);
}

std::vector<Cell> rowOf(const BuiltLayout& built, const CutLine& line) {
    const auto& conductor = built.layout.conductors[line.conductor];
    return {tagOf(conductor),
            conductor.size.text(),
            metalOf(conductor),
            insulationOf(conductor),
            colourOf(conductor),
            fromText(built, conductor, true),
            fromText(built, conductor, false),
            line.inGutter.in(),
            lengthCell(line.beyond),
            line.allowance.in(),
            line.cut.in(),
            lengthCell(line.cutAlike),
            lengthCell(line.stripFrom),
            lengthCell(line.stripTo),
            windowText(line.windows, built.layout.displayUnit)};
}

void noteWhatIsMissing(const BuiltLayout& built, const std::vector<CutLine>& lines, Table& table) {
    std::string open;
    for (const auto& line : lines) {
        if (!line.beyond) {
            open += (open.empty() ? "" : ", ") + tagOf(built.layout.conductors[line.conductor]);
        }
    }
    if (!open.empty()) {
        table.notes.push_back("The length of the raceway is not stated for " + open +
                              ": add what lies beyond the gutter before cutting.");
    }
    table.notes.emplace_back(
        "What is needed to make up the end beyond a raceway is not in these lengths. Measure "
        "before "
        "cutting: a conductor cannot be uncut.");
}

}  // namespace

std::vector<CutLine> cutLines(const BuiltLayout& built, const CutOptions& options) {
    CONTRACT(!options.allowance || options.allowance->in() >= 0.0);
    std::vector<CutLine> lines;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        lines.push_back(lineOf(built, i, options));
    }
    cutAlike(built, lines);
    return lines;
}

Table cutListTable(const BuiltLayout& built, const CutOptions& options) {
    const auto lines = cutLines(built, options);
    Table table{"cut-list",
                "Cut list",
                "Cut = in the gutter along the bends + the raceways at its ends + allowance, "
                "rounded up to 1/8 in. Conductors in parallel are all cut to the longest of their "
                "phase.",
                {{"Tag"},
                 {"Size"},
                 {"Metal"},
                 {"Insulation"},
                 {"Colour"},
                 {"From"},
                 {"To"},
                 {"In gutter", Kind::lengthUp},
                 {"Beyond", Kind::lengthUp},
                 {"Allowance", Kind::length},
                 {"Cut", Kind::lengthUp},
                 {"In parallel cut", Kind::lengthUp},
                 {"Strip first end", Kind::length},
                 {"Strip second end", Kind::length},
                 {"Windows"}},
                {}};
    for (const auto& line : lines) {
        table.rows.push_back(rowOf(built, line));
    }
    noteWhatIsMissing(built, lines, table);
    return table;
}

Table reelTable(const BuiltLayout& built, const CutOptions& options) {
    struct Sum {
        double pieces = 0.0;
        Inches all;
        Inches longest;
    };
    // By size first, then by texts.
    using Reel = std::tuple<int, std::string, std::string, std::string, std::string>;
    std::map<Reel, Sum> reels;
    for (const auto& line : cutLines(built, options)) {
        const auto& conductor = built.layout.conductors[line.conductor];
        auto& sum = reels[{conductor.size.rank(),
                           metalOf(conductor),
                           insulationOf(conductor),
                           strandOf(conductor),
                           colourOf(conductor)}];
        const Inches cut = line.cutAlike.value_or(line.cut);
        sum.pieces += 1.0;
        sum.all = sum.all + cut;
        sum.longest = std::max(sum.longest, cut);
    }
    Table table{"reels",
                "Conductor by the reel",
                "The cut lengths of the cut list, those in parallel as long as the longest, summed "
                "by size, metal, insulation, strand and colour; feet rounded up.",
                {{"Size"},
                 {"Metal"},
                 {"Insulation"},
                 {"Strand"},
                 {"Colour"},
                 {"Pieces", Kind::count},
                 {"Longest piece", Kind::lengthUp},
                 {"Feet together", Kind::count}},
                {}};
    for (const auto& [reel, sum] : reels) {
        const auto& [rank, metal, insulation, strand, colour] = reel;
        table.rows.push_back({units::WireSize::all()[static_cast<std::size_t>(rank)].text(),
                              metal,
                              insulation,
                              strand,
                              colour,
                              sum.pieces,
                              sum.longest.in(),
                              std::ceil(sum.all.in() / 12.0)});
    }
    return table;
}

}  // namespace gw::takeoff

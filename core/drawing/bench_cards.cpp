#include "drawing/bench_cards.h"

#include <algorithm>
#include <numeric>

#include "base/contract.h"
#include "drawing/flow.h"
#include "drawing/names.h"
#include "drawing/table.h"
#include "drawing/work_paper.h"
#include "drawing/wrap.h"
#include "editing/fields.h"
#include "takeoff/bend_marks.h"

namespace gw::drawing {

using geometry::BuiltLayout;
using takeoff::BendMark;
using takeoff::CutLine;

namespace {

constexpr double kBar = 4.5;       // mm: the conductor on the bench, not to scale across
constexpr double kStub = 9.0;      // mm of raceway drawn beyond the wall
constexpr double kRise = 7.0;      // mm from the bar up to the row of distances
constexpr double kPicture = 62.0;  // mm: width of the picture as bent
constexpr double kLeast = 30.0;    // mm: height of that picture at least
constexpr double kGap = 1.6;       // mm between neighbouring distances
constexpr double kBetween = 5.0;   // mm between cards

std::string lengthText(const units::Inches& length, units::LengthUnit unit) {
    return takeoff::shown(length.in(), {"", takeoff::Kind::length}, unit);
}
std::string lengthUpText(const units::Inches& length, units::LengthUnit unit) {
    return takeoff::shown(length.in(), {"", takeoff::Kind::lengthUp}, unit);
}
std::string degreesText(const units::Radians& angle) {
    return units::formatDecimal(angle.degrees(), 1) + "°";
}

/// What a card is made from.
struct Card {
    const BuiltLayout* built;
    CutLine cut;
    std::vector<BendMark> bends;

    const layout::Conductor& conductor() const { return built->layout.conductors[cut.conductor]; }
    const geometry::Path& path() const { return built->conductors[cut.conductor].built.path; }
    units::LengthUnit unit() const { return built->layout.displayUnit; }
};

std::vector<Card> cardsOf(const BuiltLayout& built, const takeoff::CutOptions& options) {
    std::vector<Card> cards;
    for (const auto& line : takeoff::cutLines(built, options)) {
        cards.push_back({&built, line, {}});
    }
    for (const auto& mark : takeoff::bendMarks(built)) {
        cards[mark.conductor].bends.push_back(mark);
    }
    return cards;
}

// ---- words ----------------------------------------------------------------------------------

std::string kindText(const Card& card) {
    const auto& one = card.conductor();
    std::string text = one.size.text();
    const auto add = [&](const std::string& words) { text += ", " + words; };
    add(one.metal ? std::string(standards::metalText(*one.metal)) : "metal not stated");
    add(one.insulation ? std::string(standards::insulationText(*one.insulation))
                       : "insulation not stated");
    add(one.stranding ? "strand " + std::string(standards::strandingText(*one.stranding))
                      : "strand not stated");
    add(one.colour.value_or("colour not stated"));
    return text;
}

std::string cutText(const Card& card) {
    const auto& cut = card.cut;
    const std::string length = lengthUpText(cut.cutAlike.value_or(cut.cut), card.unit());
    return cut.beyond ? "Cut " + length : "Cut " + length + " and the raceway";
}

std::string sumText(const Card& card) {
    const auto& cut = card.cut;
    std::string text = "In the gutter " + lengthText(cut.inGutter, card.unit());
    if (!cut.beyond) {
        text += ", the raceway beyond (length not stated)";
    } else if (cut.beyond->in() > 0.0) {
        text += ", in raceways beyond " + lengthText(*cut.beyond, card.unit());
    }
    text += ", allowance " + lengthText(cut.allowance, card.unit());
    if (cut.cutAlike) {
        text += "; cut as long as the longest of its parallel set";
    }
    return text + ".";
}

std::string endsText(const Card& card) {
    const auto& in = card.built->layout;
    return "First end: " + editing::endText(in, card.conductor().from) +
           ".  Second end: " + editing::endText(in, card.conductor().to) + ".";
}

bool inRaceway(const layout::End& end) {
    return std::holds_alternative<layout::AtEntry>(end);
}

Table bendsOf(const Card& card) {
    Table table;
    table.title = "Bends of " + tagOf(card.conductor());
    table.subtitle = inRaceway(card.conductor().from)
                         ? "measured from where it passes the wall at its first end"
                         : "measured from the tip of its first end";
    table.columns = {{"No.", AnchorX::right},
                     {"Begins", AnchorX::right},
                     {"Ends", AnchorX::right},
                     {"From second end", AnchorX::right},
                     {"Angle", AnchorX::right},
                     {"Bend on, up to", AnchorX::right},
                     {"Radius", AnchorX::right},
                     {"Turn", AnchorX::left, 1.0}};
    table.whenEmpty = "Straight: no bend.";
    for (const auto& mark : card.bends) {
        table.rows.push_back({{std::to_string(mark.number),
                               lengthText(mark.start, card.unit()),
                               lengthText(mark.end, card.unit()),
                               lengthText(mark.fromSecondEnd, card.unit()),
                               degreesText(mark.angle),
                               degreesText(mark.springsOpen),
                               lengthText(mark.radius, card.unit()),
                               mark.plane}});
    }
    return table;
}

// ---- the conductor on the bench -------------------------------------------------------------

Text words(Point at, std::string said, double height, AnchorX anchor, Face face = Face::regular) {
    Text text;
    text.at = at;
    text.text = std::move(said);
    text.height = height;
    text.face = face;
    text.anchorX = anchor;
    text.anchorY = AnchorY::top;
    return text;
}

/// The straight conductor across a width: where a length along it lies on the paper.
class Bench {
public:
    Bench(Sketch& sketch, const Card& card, const Rect& room)
        : sketch_(&sketch),
          card_(&card),
          sizes_(workSizes()),
          room_(room),
          from_(room.x + kStub),
          perInch_((room.width - 2.0 * kStub) / std::max(card.cut.inGutter.in(), 1e-6)),
          top_(room.y + sizes_.line() + kRise) {}

    static double height() { return 3.0 * workSizes().line() + kRise + kBar + 1.0; }

    void draw() const {
        drawBar();
        drawBare();
        drawBends();
        drawDistances();
        drawUnder();
    }

private:
    double at(double inches) const { return from_ + inches * perInch_; }
    double length() const { return card_->cut.inGutter.in(); }
    Rect bar(double from, double to) const { return {at(from), top_, at(to) - at(from), kBar}; }

    void drawBar() const {
        const auto style = styleOf(card_->conductor(), card_->built->layout);
        sketch_->rect(Stratum::objects, bar(0.0, length()), inkPen(kObject), style.fill);
        for (const bool first : {true, false}) {
            const auto& end = first ? card_->conductor().from : card_->conductor().to;
            if (inRaceway(end)) {
                drawStub(first);
            }
        }
    }

    /// The conductor goes on into the raceway.
    void drawStub(bool first) const {
        const double wall = at(first ? 0.0 : length());
        const double out = first ? wall - kStub : wall + kStub;
        const auto pen = inkPen(kFine, Dash::dashed);
        sketch_->line(Stratum::objects, {wall, top_}, {out, top_}, pen);
        sketch_->line(Stratum::objects, {wall, top_ + kBar}, {out, top_ + kBar}, pen);
        sketch_->line(
            Stratum::marks, {wall, top_ - 1.5}, {wall, top_ + kBar + 1.5}, inkPen(kOutline));
    }

    /// What is stripped: at the ends, and windows.
    std::vector<std::pair<double, double>> bare() const {
        std::vector<std::pair<double, double>> all;
        if (card_->cut.stripFrom) {
            all.emplace_back(0.0, card_->cut.stripFrom->in());
        }
        for (const auto& window : card_->cut.windows) {
            all.emplace_back(window.from.in(), window.from.in() + window.length.in());
        }
        if (card_->cut.stripTo) {
            all.emplace_back(length() - card_->cut.stripTo->in(), length());
        }
        return all;
    }

    void drawBare() const {
        for (const auto& [from, to] : bare()) {
            Rect strip = bar(std::max(from, 0.0), std::min(to, length()));
            sketch_->rect(Stratum::objects, strip, inkPen(kObject), kPaper);
            strip.y += kBar * 0.2;
            strip.height -= kBar * 0.4;
            sketch_->rect(
                Stratum::objects, strip, Pen{kFine, kCopperLine, Dash::solid}, kCopperFill);
        }
    }

    void drawBends() const {
        for (const auto& mark : card_->bends) {
            const Rect span = bar(mark.start.in(), mark.end.in());
            sketch_->rect(Stratum::marks, span, inkPen(kFine), kPaleGrey);
            hatch(*sketch_, Stratum::marks, span, 1.2, inkPen(kThin));
        }
    }

    /// Both ends of every bend above the bar, as near to their place as they fit.
    void drawDistances() const {
        std::vector<double> wishes;
        std::vector<double> widths;
        std::vector<std::string> texts;
        for (const auto& mark : card_->bends) {
            for (const auto& place : {mark.start, mark.end}) {
                wishes.push_back(at(place.in()));
                texts.push_back(lengthText(place, card_->unit()));
                widths.push_back(
                    sketch_->metrics().width(texts.back(), sizes_.body, Face::regular) + kGap);
            }
        }
        const auto places = spread(wishes, widths, room_.x, room_.right());
        for (std::size_t i = 0; i < places.size(); ++i) {
            sketch_->text(words({places[i], room_.y}, texts[i], sizes_.body, AnchorX::middle));
            const double under = room_.y + sizes_.line();
            sketch_->chain(Stratum::dimensions,
                           {{places[i], under},
                            {places[i], under + 1.2},
                            {wishes[i], top_ - 2.0},
                            {wishes[i], top_ + kBar}},
                           inkPen(kThin));
        }
    }

    /// Under the bar: each bend's number, and how long each strip and window is.
    void drawUnder() const {
        struct Note {
            double wish;
            std::string text;
            Face face;
        };
        std::vector<Note> notes;
        for (const auto& mark : card_->bends) {
            notes.push_back({at((mark.start.in() + mark.end.in()) / 2.0),
                             std::to_string(mark.number),
                             Face::bold});
        }
        for (const auto& [from, to] : bare()) {
            const bool window = from > 0.0 && to < length();
            const std::string size = lengthText(units::Inches::of(to - from), card_->unit());
            notes.push_back({at((from + to) / 2.0),
                             window ? "window " + size + " from " +
                                          lengthText(units::Inches::of(from), card_->unit())
                                    : "strip " + size,
                             Face::regular});
        }
        std::stable_sort(notes.begin(), notes.end(), [](const Note& a, const Note& b) {
            return a.wish < b.wish;
        });
        std::vector<double> wishes;
        std::vector<double> widths;
        for (const auto& note : notes) {
            wishes.push_back(note.wish);
            widths.push_back(sketch_->metrics().width(note.text, sizes_.body, note.face) + kGap);
        }
        const auto places = spread(wishes, widths, room_.x, room_.right());
        for (std::size_t i = 0; i < notes.size(); ++i) {
            sketch_->text(words({places[i], top_ + kBar + 1.6},
                                notes[i].text,
                                sizes_.body,
                                AnchorX::middle,
                                notes[i].face));
        }
    }

    Sketch* sketch_;
    const Card* card_;
    TextSizes sizes_;
    Rect room_;
    double from_;
    double perInch_;
    double top_;
};

// ---- as bent --------------------------------------------------------------------------------

/// Seen from the front, the right and above: the three axes of the gutter 120 degrees apart.
/// Right goes right and down, front left and down, up goes up.
Point isometric(const Vec3& point) {
    constexpr double kCos = 0.8660254037844386;  // cos 30 degrees
    return {kCos * (point.x - point.z), 0.5 * (point.x + point.z) - point.y};
}

void drawAsBent(Sketch& sketch, const Card& card, const Rect& room) {
    const auto sizes = workSizes();
    const Rect inner{
        room.x + 3.0, room.y + 3.0, room.width - 6.0, room.height - 6.0 - sizes.line()};
    std::vector<Point> seen;
    for (const Vec3& point : card.path().flattened(0.01)) {
        seen.push_back(isometric(point));
    }
    const auto [left, right] =
        std::minmax_element(seen.begin(), seen.end(), [](Point a, Point b) { return a.x < b.x; });
    const auto [top, bottom] =
        std::minmax_element(seen.begin(), seen.end(), [](Point a, Point b) { return a.y < b.y; });
    const double wide = std::max(right->x - left->x, 1e-6);
    const double high = std::max(bottom->y - top->y, 1e-6);
    const double scale = std::min(inner.width / wide, inner.height / high);
    const Point corner{inner.x + (inner.width - wide * scale) / 2.0 - left->x * scale,
                       inner.y + (inner.height - high * scale) / 2.0 - top->y * scale};
    for (Point& point : seen) {
        point = {corner.x + point.x * scale, corner.y + point.y * scale};
    }
    sketch.rect(Stratum::frame, room, inkPen(kThin));
    Pen pen = inkPen(1.0);
    pen.roundCaps = true;
    sketch.chain(Stratum::objects, seen, pen);
    sketch.add(Stratum::marks, Circle{seen.front(), 1.5, inkPen(kObject), kPaper});
    sketch.text(words({room.x + 1.5, room.bottom() - sizes.line()},
                      "as bent; ring: first end",
                      sizes.body,
                      AnchorX::left));
}

// ---- a card ---------------------------------------------------------------------------------

double headHeight() {
    return workSizes().title * 1.5 + 2.0 * workSizes().line() + 2.0;
}

void drawHead(Sketch& sketch, const Card& card, const Rect& room) {
    const auto sizes = workSizes();
    const std::string cut = cutText(card);
    const std::string tag = tagOf(card.conductor());
    const double tagWidth = sketch.metrics().width(tag, sizes.title, Face::bold);
    const double cutWidth = sketch.metrics().width(cut, sizes.title, Face::bold);
    sketch.text(words({room.x, room.y}, tag, sizes.title, AnchorX::left, Face::bold));
    sketch.text(words({room.right(), room.y}, cut, sizes.title, AnchorX::right, Face::bold));
    const auto fitted = [&](const std::string& text, double width) {
        return shortened(text, width, sizes.body, Face::regular, sketch.metrics());
    };
    sketch.text(words({room.x + tagWidth + 4.0, room.y + 1.1},
                      fitted(kindText(card), room.width - tagWidth - cutWidth - 8.0),
                      sizes.body,
                      AnchorX::left));
    double y = room.y + sizes.title * 1.5;
    for (const auto& text : {endsText(card), sumText(card)}) {
        sketch.text(words({room.x, y}, fitted(text, room.width), sizes.body, AnchorX::left));
        y += sizes.line();
    }
}

Rect tableRoom(const Rect& room, double height) {
    return {room.x, room.y, room.width - kPicture - 4.0, height};
}

/// Head, bench, then table and picture side by side.
double lowerHeight(const Card& card, double width, const TextMetrics& metrics) {
    const double table =
        tableHeight(bendsOf(card), width - kPicture - 4.0, workSizes(), metrics) + 1.0;
    return card.bends.empty() ? table : std::max(table, kLeast);
}

void setCard(std::vector<Sketch>& pages, Flow& flow, const Card& card, const TextMetrics& metrics) {
    const double width = flow.room().width;
    const double lower = lowerHeight(card, width, metrics);
    const double height = headHeight() + Bench::height() + lower + 2.0;
    flow.ensure(0.0, height);
    const Rect room = flow.room();
    Sketch& sketch = flow.sketch();
    drawHead(sketch, card, room);
    Bench(sketch, card, {room.x, room.y + headHeight(), width, Bench::height()}).draw();
    const double y = room.y + headHeight() + Bench::height();
    Flow beside(pages, {}, {room});
    beside.addRegions(pages.size() - 1, {tableRoom({room.x, y, width, lower}, lower + 1.0)});
    setTable(beside, bendsOf(card), workSizes());
    if (!card.bends.empty()) {
        drawAsBent(flow.sketch(), card, {room.right() - kPicture, y, kPicture, lower});
    }
    flow.use(height + kBetween);
    const double end = room.y + height + kBetween / 2.0;
    flow.sketch().line(Stratum::frame, {room.x, end}, {room.right(), end}, inkPen(kThin));
}

}  // namespace

std::vector<double> spread(const std::vector<double>& wishes,
                           const std::vector<double>& widths,
                           double from,
                           double to) {
    CONTRACT(wishes.size() == widths.size());
    const double needed = std::accumulate(widths.begin(), widths.end(), 0.0);
    const double shrink = needed > to - from ? (to - from) / needed : 1.0;
    std::vector<double> places(wishes);
    double edge = from;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double half = widths[i] * shrink / 2.0;
        places[i] = std::max(places[i], edge + half);
        edge = places[i] + half;
    }
    edge = to;
    for (std::size_t i = places.size(); i-- > 0;) {
        const double half = widths[i] * shrink / 2.0;
        places[i] = std::min(places[i], edge - half);
        edge = places[i] - half;
    }
    return places;
}

std::vector<Drawing> benchCards(const BuiltLayout& built,
                                const std::vector<checks::Finding>& findings,
                                const CardOptions& options,
                                const TextMetrics& metrics) {
    const auto cards = cardsOf(built, options.cut);
    if (cards.empty()) {
        return {};
    }
    std::vector<Sketch> pages;
    pages.emplace_back(metrics);
    Flow flow(pages, {workArea(options.paper)}, {workArea(options.paper)});
    for (const Card& card : cards) {
        setCard(pages, flow, card, metrics);
    }
    return finished(std::move(pages),
                    {options.paper,
                     "Bench cards",
                     "Hatched: bends. Try radius and springback on an offcut; strip by the "
                     "connector's own instructions."},
                    built.layout,
                    findings);
}

}  // namespace gw::drawing

#include "drawing/template.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QImage>
#include <QPainter>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <cmath>
#include <map>

#include "paint/fonts.h"
#include "sheet/export.h"
#include "support/shipped_shelf.h"
#include "ui/panels/panel_bench.h"
#include "ui/support/legible.h"
#include "ui/support/process.h"

/// The drilling template as it comes out of a printer.
namespace gw::ui {
namespace {

using drawing::Drawing;
using drawing::Point;
using drawing::TemplateTile;
using takeoff::Hole;

constexpr double kDots = 300.0;
constexpr double kDotsPerMm = kDots / 25.4;
constexpr double kSixtyFourthMm = 25.4 / 64.0;

/// Where the ink of a ring is, found from the middle outward, and the circle through it.
struct Found {
    Point centre;  ///< mm
    double radius = 0.0;
    int points = 0;
};

bool inside(const drawing::Rect& window, Point at, double margin) {
    return at.x > window.x + margin && at.x < window.right() - margin && at.y > window.y + margin &&
           at.y < window.bottom() - margin;
}

double inkAlong(const QImage& image, Point centre, double angle, double from, double to) {
    double sum = 0.0;
    double weight = 0.0;
    for (double r = from; r <= to; r += 0.25) {
        const int x = static_cast<int>(std::lround(centre.x + r * std::cos(angle) - 0.5));
        const int y = static_cast<int>(std::lround(centre.y + r * std::sin(angle) - 0.5));
        const double ink = image.valid(x, y) ? 255.0 - qGray(image.pixel(x, y)) : 0.0;
        sum += ink * r;
        weight += ink;
    }
    return weight > 400.0 ? sum / weight : -1.0;
}

/// Least squares (Kåsa): x² + y² = 2 a x + 2 b y + c.
Found circleThrough(const std::vector<Point>& points) {
    double m[3][4] = {};
    for (const auto& p : points) {
        const double row[4] = {2.0 * p.x, 2.0 * p.y, 1.0, p.x * p.x + p.y * p.y};
        for (int i = 0; i < 3; ++i) {
            for (int j = 0; j < 4; ++j) {
                m[i][j] += row[i] * row[j];
            }
        }
    }
    for (int i = 0; i < 3; ++i) {
        for (int k = i + 1; k < 3; ++k) {
            const double factor = m[k][i] / m[i][i];
            for (int j = i; j < 4; ++j) {
                m[k][j] -= factor * m[i][j];
            }
        }
    }
    const double c = m[2][3] / m[2][2];
    const double b = (m[1][3] - m[1][2] * c) / m[1][1];
    const double a = (m[0][3] - m[0][1] * b - m[0][2] * c) / m[0][0];
    return {{a, b}, std::sqrt(c + a * a + b * b), static_cast<int>(points.size())};
}

/// Looks for a ring of that radius about a place, as far as the window shows it; away from the arms
/// of the centre mark.
Found findRing(const QImage& image, const drawing::Rect& window, Point about, double radius) {
    const double reach = 1.2 * kDotsPerMm;
    const Point centre{about.x * kDotsPerMm, about.y * kDotsPerMm};
    std::vector<Point> points;
    for (int degree = 0; degree < 360; ++degree) {
        const double angle = degree * std::acos(-1.0) / 180.0;
        const Point at{about.x + radius * std::cos(angle), about.y + radius * std::sin(angle)};
        if (degree % 90 < 15 || degree % 90 > 75 || !inside(window, at, 1.5)) {
            continue;
        }
        const double r = inkAlong(
            image, centre, angle, radius * kDotsPerMm - reach, radius * kDotsPerMm + reach);
        if (r > 0.0) {
            points.push_back({centre.x + r * std::cos(angle), centre.y + r * std::sin(angle)});
        }
    }
    if (points.size() < 60) {
        return {};
    }
    auto found = circleThrough(points);
    found.centre = {found.centre.x / kDotsPerMm, found.centre.y / kDotsPerMm};
    found.radius /= kDotsPerMm;
    return found;
}

class TemplateOf : public testing::TestWithParam<const char*> {
protected:
    TemplateOf()
        : bench(GetParam()),
          built(bench.document->built()),
          tiles(drawing::templateTiles(built, {})),
          pages(drawing::drillingTemplate(built, {}, {}, metrics)),
          walls(takeoff::wallHoles(built)) {}

    const takeoff::WallHoles& wallOf(const TemplateTile& tile) const {
        return *std::find_if(
            walls.begin(), walls.end(), [&](const auto& wall) { return wall.wall == tile.wall; });
    }
    /// Where a hole is to be on a sheet: from the layout's own numbers.
    Point placeOn(const TemplateTile& tile, const Hole& hole) const {
        const Vec3 in = built.gutter().inside;
        switch (tile.wall) {
            case layout::Wall::left:
                return onSheet(tile, hole.v, in.y - hole.u);
            case layout::Wall::right:
                return onSheet(tile, in.z - hole.v, in.y - hole.u);
            case layout::Wall::top:
                return onSheet(tile, hole.u, hole.v);
            case layout::Wall::bottom:
                return onSheet(tile, hole.u, in.z - hole.v);
            case layout::Wall::back:
                return onSheet(tile, hole.u, in.y - hole.v);
        }
        return {};
    }
    static Point onSheet(const TemplateTile& tile, double across, double down) {
        return {tile.wallCorner.x + across * 25.4, tile.wallCorner.y + down * 25.4};
    }
    /// Every hole with its centre on the sheet is where it belongs, and as large.
    void measure(const QImage& image, const TemplateTile& tile) {
        for (const auto& hole : wallOf(tile).holes) {
            const Point at = placeOn(tile, hole);
            const double radius = hole.diameter ? hole.diameter->mm() / 2.0 : 0.0;
            if (radius <= 0.0 || !inside(tile.window, at, 0.0)) {
                continue;
            }
            const auto found = findRing(image, tile.window, at, radius);
            ASSERT_GT(found.points, 0) << hole.what;
            EXPECT_NEAR(found.centre.x, at.x, kSixtyFourthMm) << hole.what;
            EXPECT_NEAR(found.centre.y, at.y, kSixtyFourthMm) << hole.what;
            EXPECT_NEAR(found.radius, radius, kSixtyFourthMm) << hole.what;
            ++measured;
        }
    }

    /// Those whose size is known, each counted on every sheet that has its centre.
    int holes() const {
        int count = 0;
        for (const auto& tile : tiles) {
            for (const auto& hole : wallOf(tile).holes) {
                count += hole.diameter && inside(tile.window, placeOn(tile, hole), 0.0) ? 1 : 0;
            }
        }
        EXPECT_GE(count, static_cast<int>(built.entries.size()));
        return count;
    }

    FontMetrics metrics;
    test::PanelBench bench;
    const geometry::BuiltLayout& built;
    std::vector<TemplateTile> tiles;
    std::vector<Drawing> pages;
    std::vector<takeoff::WallHoles> walls;
    int measured = 0;
};

TEST_P(TemplateOf, HolesOfTheRasterisedPdfAreWithinASixtyFourth) {
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("template.pdf"));
    test::writeFile(path, sheetToPdf(pages));
    const auto run = test::runProgram(QStringLiteral("pdftoppm"),
                                      {"-r", "300", "-gray", path, folder.filePath("page")});
    ASSERT_TRUE(run.good()) << run.err.toStdString();
    const auto images = QDir(folder.path()).entryList({"page-*.pgm"}, QDir::Files, QDir::Name);
    ASSERT_EQ(static_cast<std::size_t>(images.size()), pages.size());
    for (std::size_t page = 0; page < pages.size(); ++page) {
        const QImage image(folder.filePath(images[static_cast<qsizetype>(page)]));
        ASSERT_EQ(image.width(), std::lround(pages[page].width * kDotsPerMm));
        measure(image, tiles[page]);
    }
    EXPECT_EQ(measured, holes());
}

TEST_P(TemplateOf, HolesOfTheSvgAreWithinASixtyFourth) {
    for (std::size_t page = 0; page < pages.size(); ++page) {
        QSvgRenderer svg(pageToSvg(pages[page]));
        ASSERT_TRUE(svg.isValid());
        QImage image(static_cast<int>(std::lround(pages[page].width * kDotsPerMm)),
                     static_cast<int>(std::lround(pages[page].height * kDotsPerMm)),
                     QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        svg.render(&painter,
                   QRectF(0, 0, pages[page].width * kDotsPerMm, pages[page].height * kDotsPerMm));
        painter.end();
        measure(image, tiles[page]);
    }
    EXPECT_EQ(measured, holes());
}

/// A hole that an edge of a sheet cuts is drawn as far as each sheet goes, also where its centre
/// is on another. Within two dots of the edge nothing is asked.
TEST_P(TemplateOf, CutHolesShowOnEachSheetTheyReach) {
    for (std::size_t page = 0; page < pages.size(); ++page) {
        const QImage image = pageToImage(pages[page], kDots);
        for (const auto& hole : wallOf(tiles[page]).holes) {
            const Point at = placeOn(tiles[page], hole);
            const double radius = hole.diameter ? hole.diameter->mm() / 2.0 : 0.0;
            const Point centre{at.x * kDotsPerMm, at.y * kDotsPerMm};
            for (int degree = 20; radius > 0.0 && degree < 360; degree += 7) {
                const double angle = degree * std::acos(-1.0) / 180.0;
                const Point on{at.x + radius * std::cos(angle), at.y + radius * std::sin(angle)};
                if (degree % 90 < 15 || degree % 90 > 75 || !inside(tiles[page].window, on, 1.0)) {
                    continue;
                }
                const double r = inkAlong(
                    image, centre, angle, (radius - 0.5) * kDotsPerMm, (radius + 0.5) * kDotsPerMm);
                EXPECT_NEAR(r / kDotsPerMm, radius, kSixtyFourthMm)
                    << "page " << page + 1 << ", " << hole.what << " at " << degree;
            }
        }
    }
}

/// Lengths of the lines on which 4 in and 100 mm are read off.
TEST_P(TemplateOf, EverySheetHasBothCheckBars) {
    for (std::size_t page = 0; page < pages.size(); ++page) {
        int inches = 0;
        int millimetres = 0;
        for (const auto& layer : pages[page].layers) {
            for (const auto& element : layer.elements) {
                const auto* line = std::get_if<drawing::Polyline>(&element);
                if (line == nullptr || line->points.size() != 2 ||
                    line->points[0].y != line->points[1].y ||
                    line->points[0].y < tiles[page].window.bottom()) {
                    continue;
                }
                const double length = std::abs(line->points[1].x - line->points[0].x);
                inches += std::abs(length - 101.6) < 1e-9 ? 1 : 0;
                millimetres += std::abs(length - 100.0) < 1e-9 ? 1 : 0;
            }
        }
        EXPECT_EQ(inches, 1) << "page " << page + 1;
        EXPECT_EQ(millimetres, 1) << "page " << page + 1;
    }
}

TEST_P(TemplateOf, EveryHoleIsNamedOnASheetThatHasItsCentre) {
    for (const auto& wall : walls) {
        for (const auto& hole : wall.holes) {
            bool named = false;
            for (std::size_t page = 0; page < pages.size() && !named; ++page) {
                if (tiles[page].wall != wall.wall ||
                    !inside(tiles[page].window, placeOn(tiles[page], hole), 0.0)) {
                    continue;
                }
                for (const auto& layer : pages[page].layers) {
                    for (const auto& element : layer.elements) {
                        const auto* text = std::get_if<drawing::Text>(&element);
                        named = named || (text != nullptr && text->text == hole.what);
                    }
                }
            }
            EXPECT_TRUE(named) << hole.what;
        }
    }
}

/// The same letter on two sheets is the same place of the wall.
TEST_P(TemplateOf, JoiningMarksOfTwoSheetsFallOnOneAnother) {
    std::map<std::string, Point> places;
    for (const auto& tile : tiles) {
        for (const auto& joint : drawing::templateJoints(tile)) {
            const Point place{joint.at.x - tile.wallCorner.x, joint.at.y - tile.wallCorner.y};
            const auto key = std::string(layout::wallText(tile.wall)) + joint.name;
            const auto [before, isNew] = places.emplace(key, place);
            EXPECT_NEAR(before->second.x, place.x, 1e-9) << key;
            EXPECT_NEAR(before->second.y, place.y, 1e-9) << key;
        }
    }
}

TEST_P(TemplateOf, NoTextTouchesAnotherOrIsTooSmall) {
    for (std::size_t page = 0; page < pages.size(); ++page) {
        std::vector<std::pair<drawing::Rect, std::string>> boxes;
        for (const auto& layer : pages[page].layers) {
            for (const auto& element : layer.elements) {
                if (const auto* text = std::get_if<drawing::Text>(&element)) {
                    EXPECT_GE(text->height * 0.729, 2.0) << text->text;
                    const auto box = drawing::inkOf(*text, metrics);
                    EXPECT_TRUE(box.x > 0 && box.y > 0 && box.right() < pages[page].width &&
                                box.bottom() < pages[page].height)
                        << text->text;
                    for (const auto& [other, said] : boxes) {
                        EXPECT_TRUE(box.right() <= other.x || other.right() <= box.x ||
                                    box.bottom() <= other.y || other.bottom() <= box.y)
                            << "page " << page + 1 << ": " << text->text << " / " << said;
                    }
                    boxes.emplace_back(box, text->text);
                }
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         TemplateOf,
                         testing::Values("five-tenants",
                                         "boat-hall",
                                         "gate-house",
                                         "rope-walk",
                                         "shallow-loft",
                                         "slipway-pumps"),
                         [](const auto& tested) {
                             std::string name = tested.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

/// As seen from outside, a hole near the cover of the left wall is at the right, of the right wall
/// at the left.
TEST(TemplateView, WallsAreSeenFromOutsideAndTheBackFromInside) {
    const Vec3 inside{48, 10, 8};
    const auto near = [](Point point, double x, double y) {
        return std::abs(point.x - x) < 1e-12 && std::abs(point.y - y) < 1e-12;
    };
    EXPECT_TRUE(near(drawing::asSeen(layout::Wall::left, inside, 9, 7), 7, 1));
    EXPECT_TRUE(near(drawing::asSeen(layout::Wall::right, inside, 9, 7), 1, 1));
    EXPECT_TRUE(near(drawing::asSeen(layout::Wall::top, inside, 40, 7), 40, 7));
    EXPECT_TRUE(near(drawing::asSeen(layout::Wall::bottom, inside, 40, 7), 40, 1));
    EXPECT_TRUE(near(drawing::asSeen(layout::Wall::back, inside, 40, 9), 40, 1));
}

TEST(TemplateView, SaysThatThereAreBreachesWhereThereAre) {
    const test::PanelBench bench("broken-clearance");
    const FontMetrics metrics;
    const auto& document = *bench.document;
    for (const bool told : {true, false}) {
        const auto pages =
            drawing::drillingTemplate(document.built(),
                                      told ? document.findings() : std::vector<checks::Finding>{},
                                      {},
                                      metrics);
        ASSERT_FALSE(pages.empty());
        for (const auto& page : pages) {
            const auto texts = test::textsOf(page);
            EXPECT_EQ(std::any_of(texts.begin(),
                                  texts.end(),
                                  [](const drawing::Text& text) {
                                      return text.text == "1 breach found: mend the layout first";
                                  }),
                      told);
        }
    }
}

TEST(TemplateView, NothingToDrillIsNoSheet) {
    layout::Layout layout;
    layout.gutter.inside = {48, 8, 8};
    const FontMetrics metrics;
    EXPECT_TRUE(
        drawing::drillingTemplate(geometry::build(layout, test::shippedShelf()), {}, {}, metrics)
            .empty());
}

}  // namespace
}  // namespace gw::ui

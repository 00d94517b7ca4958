#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QSvgRenderer>
#include <algorithm>
#include <filesystem>
#include <map>

#include "base/read_file.h"
#include "drawing/bench_cards.h"
#include "drawing/label_sheet.h"
#include "drawing/landing_sheet.h"
#include "drawing/style.h"
#include "files/layout_file.h"
#include "paint/fonts.h"
#include "sheet/export.h"
#include "support/shipped_shelf.h"
#include "takeoff/bend_marks.h"
#include "takeoff/labels.h"
#include "takeoff/landing_steps.h"
#include "ui/support/legible.h"

/// Bench cards, landing steps and labels of every sample, set in the shipped font.
namespace gw::ui {
namespace {

using drawing::Drawing;
using drawing::Paper;
using drawing::Rect;
using drawing::Text;
using test::textsOf;
using testing::Contains;

struct Sample {
    geometry::BuiltLayout built;
    std::vector<checks::Finding> findings;
};

const std::map<std::string, Sample>& samples() {
    static const std::map<std::string, Sample> kSamples = [] {
        std::map<std::string, Sample> all;
        const auto shelf = test::shippedShelf();
        for (const auto& folder :
             std::filesystem::directory_iterator(std::string(GW_SOURCE_DIR) + "/samples")) {
            const auto path = folder.path().string() + "/layout.json";
            auto built =
                geometry::build(files::readLayout(*readFile(path), path, shelf).value(), shelf);
            auto findings = checks::checkAll(built);
            all.emplace(folder.path().filename().string(),
                        Sample{std::move(built), std::move(findings)});
        }
        return all;
    }();
    return kSamples;
}

std::vector<std::string> wordsOf(const std::vector<Drawing>& pages) {
    std::vector<std::string> words;
    for (const auto& page : pages) {
        for (const auto& text : textsOf(page)) {
            words.push_back(text.text);
        }
    }
    return words;
}

/// The three papers of a sample.
std::map<std::string, std::vector<Drawing>> papersOf(const Sample& sample,
                                                     Paper paper,
                                                     const FontMetrics& metrics) {
    return {
        {"cards", drawing::benchCards(sample.built, sample.findings, {paper, {}}, metrics)},
        {"steps", drawing::landingSheet(sample.built, sample.findings, paper, metrics)},
        {"labels", drawing::labelSheet(sample.built, {paper, std::nullopt, 0}, metrics).value()}};
}

class WorkPapers : public testing::TestWithParam<Paper> {
protected:
    /// For each page of each paper of each sample.
    template <class Each>
    void forPages(const Each& each) const {
        for (const auto& [name, sample] : samples()) {
            for (const auto& [kind, pages] : papersOf(sample, GetParam(), metrics_)) {
                EXPECT_FALSE(pages.empty()) << name << " " << kind;
                for (std::size_t i = 0; i < pages.size(); ++i) {
                    SCOPED_TRACE(name + " " + kind + " page " + std::to_string(i + 1));
                    each(pages[i]);
                }
            }
        }
    }
    FontMetrics metrics_;
};

TEST_P(WorkPapers, TextsNeitherOverlapNorLeaveThePaper) {
    forPages([&](const Drawing& page) {
        const Rect border = drawing::grown({0, 0, page.width, page.height}, -7.0);
        std::vector<Rect> inks;
        for (const auto& text : textsOf(page)) {
            EXPECT_TRUE(drawing::holds(border, extent(text, metrics_))) << text.text;
            const Rect ink = test::inkOfText(text, metrics_);
            for (const Rect& other : inks) {
                EXPECT_FALSE(overlap(ink, other)) << text.text;
            }
            inks.push_back(ink);
        }
    });
}

TEST_P(WorkPapers, NoLineRunsThroughAText) {
    forPages([&](const Drawing& page) {
        for (const auto& text : textsOf(page)) {
            EXPECT_EQ(test::linesThrough(page, text, metrics_), 0) << text.text;
        }
    });
}

TEST_P(WorkPapers, CapitalsAreAtLeastTwoMillimetresHigh) {
    forPages([](const Drawing& page) {
        for (const auto& text : textsOf(page)) {
            EXPECT_GE(0.729 * text.height, 2.0) << text.text;  // capitals of the shipped font
        }
    });
}

TEST_P(WorkPapers, SayWhetherTheLayoutHasBreaches) {
    for (const auto& [name, sample] : samples()) {
        const auto counts = checks::tally(sample.findings);
        auto papers = papersOf(sample, GetParam(), metrics_);
        papers.erase("labels");
        for (const auto& [kind, pages] : papers) {
            for (const auto& page : pages) {
                EXPECT_THAT(wordsOf({page}),
                            Contains(counts.breach == 0
                                         ? "No breach found by the program's checks."
                                         : "1 breach found: mend the layout before anything is "
                                           "cut."))
                    << name << " " << kind;
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Papers,
                         WorkPapers,
                         testing::Values(Paper::letter, Paper::a4, Paper::tabloid),
                         [](const auto& at) { return std::string(drawing::paperText(at.param)); });

TEST(BenchCards, SayWhatTheTablesSay) {
    const FontMetrics metrics;
    for (const auto& [name, sample] : samples()) {
        const auto words = wordsOf(drawing::benchCards(sample.built, sample.findings, {}, metrics));
        const auto table = takeoff::bendMarkTable(sample.built);
        for (std::size_t column = 0; column < table.columns.size(); ++column) {
            const auto& head = table.columns[column];
            if (head.kind != takeoff::Kind::length) {
                continue;
            }
            for (const auto& row : table.rows) {
                EXPECT_THAT(
                    words,
                    Contains(takeoff::shown(row[column], head, sample.built.layout.displayUnit)))
                    << name;
            }
        }
        for (const auto& conductor : sample.built.layout.conductors) {
            EXPECT_THAT(words, Contains(conductor.tag)) << name;
        }
    }
}

/// As long on the paper as the share of the whole: the hatched spans of one card.
TEST(BenchCards, DrawBendsToScaleAlongTheConductor) {
    const FontMetrics metrics;
    const auto& sample = samples().at("boat-hall");
    const auto pages = drawing::benchCards(sample.built, sample.findings, {}, metrics);
    std::vector<Rect> spans;
    std::vector<Rect> bars;
    for (const auto& page : pages) {
        for (const auto& layer : page.layers) {
            for (const auto& element : layer.elements) {
                const auto* box = std::get_if<drawing::Polyline>(&element);
                if (box == nullptr || !box->closed || !box->fill || box->points.size() != 4) {
                    continue;
                }
                const Rect rect{box->points[0].x,
                                box->points[0].y,
                                box->points[2].x - box->points[0].x,
                                box->points[2].y - box->points[0].y};
                if (std::abs(rect.height - 4.5) < 1e-9) {
                    (*box->fill == drawing::kPaleGrey ? spans : bars).push_back(rect);
                }
            }
        }
    }
    const auto marks = takeoff::bendMarks(sample.built);
    ASSERT_EQ(spans.size(), marks.size());
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto bar = std::find_if(bars.begin(), bars.end(), [&](const Rect& one) {
            return std::abs(one.y - spans[i].y) < 1e-9 && one.x <= spans[i].x;
        });
        ASSERT_NE(bar, bars.end());
        const double whole = sample.built.conductors[marks[i].conductor].built.path.length().in();
        EXPECT_NEAR((spans[i].x - bar->x) / bar->width, marks[i].start.in() / whole, 1e-6);
        EXPECT_NEAR(
            spans[i].width / bar->width, (marks[i].end - marks[i].start).in() / whole, 1e-6);
    }
}

TEST(LandingSheet, HasAStepForEachConductorInTheirOrder) {
    const FontMetrics metrics;
    for (const auto& [name, sample] : samples()) {
        const auto words =
            wordsOf(drawing::landingSheet(sample.built, sample.findings, Paper::letter, metrics));
        const auto table = takeoff::landingTable(sample.built);
        std::size_t next = 0;
        for (const auto& word : words) {
            if (next < table.rows.size() &&
                word.rfind(std::to_string(next + 1) + ". " +
                               std::get<std::string>(table.rows[next][2]) + ", ",
                           0) == 0) {
                ++next;
            }
        }
        EXPECT_EQ(next, sample.built.conductors.size()) << name;
    }
}

TEST(LabelSheet, HasAsManyLabelsAsTheTableAsksFor) {
    const FontMetrics metrics;
    for (const auto& [name, sample] : samples()) {
        const auto words =
            wordsOf(drawing::labelSheet(sample.built, {Paper::letter, {}, 0}, metrics).value());
        for (const auto& row : takeoff::labelTable(sample.built).rows) {
            EXPECT_EQ(std::count(words.begin(), words.end(), std::get<std::string>(row[0])),
                      static_cast<long>(std::get<double>(row[5])))
                << name;
        }
    }
}

TEST(WorkPaperFiles, AreTheSameBytesAgainAndReadAsSvg) {
    const FontMetrics metrics;
    const auto& sample = samples().at("five-tenants");
    for (const auto& [kind, pages] : papersOf(sample, Paper::letter, metrics)) {
        const auto again = papersOf(sample, Paper::letter, metrics).at(kind);
        EXPECT_EQ(sheetToPdf(pages), sheetToPdf(again)) << kind;
        QSvgRenderer svg(pageToSvg(pages.front()));
        EXPECT_TRUE(svg.isValid()) << kind;
    }
}

}  // namespace
}  // namespace gw::ui

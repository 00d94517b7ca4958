#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <set>

#include "base/read_file.h"
#include "checks/finding.h"
#include "drawing/sheet.h"
#include "files/layout_file.h"
#include "paint/fonts.h"
#include "sheet/export.h"
#include "support/drawn_layout.h"
#include "support/shipped_shelf.h"
#include "ui/support/legible.h"
#include "ui/support/process.h"

/// The layout sheet as a whole, set in the shipped font.
namespace gw::ui {
namespace {

using drawing::Drawing;
using drawing::Paper;
using drawing::Rect;
using drawing::Text;
using test::inkOfText;
using test::linesThrough;
using test::textsOf;

struct SheetCase {
    std::string name;
    geometry::BuiltLayout built;
    std::vector<checks::Finding> findings;
};

SheetCase drawnCase(const std::string& name, const test::DrawnOptions& options) {
    SheetCase sheet{name, test::drawnLayout(options), {}};
    sheet.findings = test::drawnFindings(sheet.built);
    return sheet;
}

SheetCase sampleCase(const std::string& name) {
    const auto path = std::string(GW_SOURCE_DIR) + "/samples/" + name + "/layout.json";
    const auto shelf = test::shippedShelf();
    const auto bytes = readFile(path);
    const auto layout = files::readLayout(bytes.value(), path, shelf);
    SheetCase sheet{"sample " + name, geometry::build(layout.value(), shelf), {}};
    sheet.findings = checks::checkAll(sheet.built);
    return sheet;
}

test::DrawnOptions options(double length, int tenants, int blocks) {
    test::DrawnOptions made;
    made.length = length;
    made.tenants = tenants;
    made.blocks = blocks;
    return made;
}

std::vector<std::string> sampleNames() {
    std::vector<std::string> names;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(GW_SOURCE_DIR) + "/samples")) {
        if (entry.is_directory()) {
            names.push_back(entry.path().filename().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// Where everything is: what its views are drawn from.
std::vector<double> shapeOf(const geometry::BuiltLayout& built) {
    std::vector<double> shape;
    const auto add = [&](const Vec3& point) {
        shape.insert(shape.end(), {point.x, point.y, point.z});
    };
    add(built.gutter().inside);
    for (const auto& entry : built.entries) {
        add(entry.centre);
    }
    for (const auto& block : built.blocks) {
        add(block.body.least);
        add(block.body.greatest);
    }
    for (const auto& conductor : built.layout.conductors) {
        for (const auto& corner : conductor.corners) {
            add(corner.at);
        }
    }
    return shape;
}

/// Of samples that differ by a fact alone, one.
void addSamples(std::vector<SheetCase>& cases) {
    std::set<std::vector<double>> shapes;
    for (const auto& name : sampleNames()) {
        auto sheet = sampleCase(name);
        if (shapes.insert(shapeOf(sheet.built)).second) {
            cases.push_back(std::move(sheet));
        }
    }
}

/// Gutters of every odd kind, and every sample of its own shape.
std::vector<SheetCase> allCases() {
    std::vector<SheetCase> cases;
    cases.push_back(drawnCase("six feet", {}));
    cases.push_back(drawnCase("no tenants", options(36.0, 0, 4)));
    cases.push_back(drawnCase("twelve inches", options(12.0, 1, 1)));
    cases.push_back(drawnCase("ten feet, forty conductors", options(120.0, 8, 4)));
    cases.push_back(drawnCase("no blocks", options(48.0, 0, 0)));
    auto metric = options(144.0, 12, 4);
    metric.topEntries = true;
    metric.unit = units::LengthUnit::millimetre;
    cases.push_back(drawnCase("twelve feet, on top, metric", metric));
    auto vertical = options(60.0, 3, 4);
    vertical.vertical = true;
    cases.push_back(drawnCase("up the wall", vertical));
    auto empty = options(72.0, 5, 4);
    empty.conductors = false;
    cases.push_back(drawnCase("no conductors", empty));
    addSamples(cases);
    return cases;
}

const std::vector<SheetCase>& cases() {
    static const std::vector<SheetCase> kCases = allCases();
    return kCases;
}

bool contains(const Drawing& page, const std::string& words) {
    const auto texts = textsOf(page);
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) {
        return text.text.find(words) != std::string::npos;
    });
}

/// Whoever wants to look at the sheets names a folder for them.
void keepForLooking(const std::string& name, const std::vector<Drawing>& pages) {
    const auto folder = qEnvironmentVariable("GW_SHEETS_TO");
    if (!folder.isEmpty()) {
        test::writeFile(folder + "/" + QString::fromStdString(name) + ".pdf", sheetToPdf(pages));
        test::writeFile(folder + "/" + QString::fromStdString(name) + ".svg",
                        pageToSvg(pages.front()));
    }
}

class LayoutSheet : public ::testing::TestWithParam<Paper> {
protected:
    std::vector<Drawing> sheetOf(const SheetCase& sheet, Paper paper) const {
        return drawing::layoutSheet(sheet.built, sheet.findings, {paper}, metrics_);
    }
    /// The same, drawn once for all tests.
    const std::vector<Drawing>& onceDrawn(const SheetCase& sheet, Paper paper) const {
        static std::map<std::pair<std::string, Paper>, std::vector<Drawing>> drawn;
        auto& pages = drawn[{sheet.name, paper}];
        if (pages.empty()) {
            pages = sheetOf(sheet, paper);
            keepForLooking(sheet.name + " on " + std::string(drawing::paperText(paper)), pages);
        }
        return pages;
    }
    FontMetrics metrics_;
};

std::string caseName(const ::testing::TestParamInfo<Paper>& info) {
    std::string name(drawing::paperText(info.param));
    std::erase(name, ' ');
    return name;
}

std::string placed(const Text& text) {
    return "'" + text.text + "' at " + std::to_string(text.at.x) + ", " + std::to_string(text.at.y);
}

TEST_P(LayoutSheet, TextsNeitherOverlapNorLeaveTheBorder) {
    for (const auto& sheet : cases()) {
        for (const auto& page : onceDrawn(sheet, GetParam())) {
            const Rect border = drawing::grown({0, 0, page.width, page.height}, -7.0);
            const auto texts = textsOf(page);
            std::vector<Rect> inks;
            for (std::size_t i = 0; i < texts.size(); ++i) {
                EXPECT_TRUE(drawing::holds(border, extent(texts[i], metrics_)))
                    << sheet.name << ": " << placed(texts[i]);
                inks.push_back(inkOfText(texts[i], metrics_));
                for (std::size_t k = 0; k < i; ++k) {
                    EXPECT_FALSE(overlap(inks[i], inks[k]))
                        << sheet.name << ": " << placed(texts[i]) << " and " << placed(texts[k]);
                }
            }
        }
    }
}

TEST_P(LayoutSheet, NoLineRunsThroughAText) {
    for (const auto& sheet : cases()) {
        for (const auto& page : onceDrawn(sheet, GetParam())) {
            for (const auto& text : textsOf(page)) {
                EXPECT_EQ(linesThrough(page, text, metrics_), 0)
                    << sheet.name << ": " << placed(text);
            }
        }
    }
}

TEST_P(LayoutSheet, CapitalsAreAtLeastTwoMillimetresHigh) {
    for (const auto& page : onceDrawn(cases().front(), GetParam())) {
        for (const auto& text : textsOf(page)) {
            EXPECT_GE(0.729 * text.height, 2.0) << text.text;  // capitals of the shipped font
        }
    }
}

TEST_P(LayoutSheet, PagesAreOfThePaper) {
    const auto size = drawing::paperSize(GetParam());
    for (const auto& page : onceDrawn(cases().front(), GetParam())) {
        EXPECT_EQ(page.width, size.width);
        EXPECT_EQ(page.height, size.height);
    }
}

TEST_P(LayoutSheet, EveryPageSaysWhatItIsAndThatItIsAPlanningAid) {
    const auto& pages = onceDrawn(cases().front(), GetParam());
    for (std::size_t i = 0; i < pages.size(); ++i) {
        for (const char* words : {"Five workshops",
                                  "Riverside yard",
                                  "Office of the yard",
                                  "2024-03-05",
                                  "NFPA 70-2023",
                                  "Planning aid only",
                                  "authority having jurisdiction",
                                  "listing and instructions",
                                  "licensed practice",
                                  "1 breach"}) {
            EXPECT_TRUE(contains(pages[i], words)) << words << " on page " << i + 1;
        }
        EXPECT_TRUE(
            contains(pages[i], std::to_string(i + 1) + " of " + std::to_string(pages.size())));
    }
}

TEST_P(LayoutSheet, FrontViewAndProfileAreOnTheFirstPageAndTheRestSomewhere) {
    const auto& pages = onceDrawn(cases().front(), GetParam());
    for (const char* words : {"Front view, cover off",
                              "Fill profile",
                              "limit 20 %, conductors",
                              "limit 75 %, at splices",
                              "12\""}) {
        EXPECT_TRUE(contains(pages.front(), words)) << words;
    }
    for (const char* words : {"Top view",
                              "72\"",
                              "Section A–A",
                              "End view from left",
                              "Key",
                              "Findings",
                              "BREACH",
                              "cannot tell",
                              "Conductors",
                              "Entries",
                              "Tap blocks",
                              "Cautions and notes",
                              "boat repair disconnect",
                              "376.56(B)(1)",
                              "350 kcmil"}) {
        EXPECT_TRUE(std::any_of(pages.begin(), pages.end(), [&](const Drawing& page) {
            return contains(page, words);
        })) << words;
    }
}

TEST_P(LayoutSheet, AGutterThatRunsUpTheWallSaysThatItIsDrawnLying) {
    for (const auto& sheet : cases()) {
        const bool vertical = sheet.built.gutter().orientation == layout::Orientation::vertical;
        EXPECT_EQ(contains(onceDrawn(sheet, GetParam()).front(), "is drawn lying"), vertical)
            << sheet.name;
    }
}

TEST_P(LayoutSheet, BreachesComeFirst) {
    int number = 0;
    std::map<std::string, int> firstAt;
    for (const auto& page : onceDrawn(cases().front(), GetParam())) {
        for (const auto& text : textsOf(page)) {
            ++number;
            for (const char* word : {"BREACH", "caution", "cannot tell", "Checks that meet"}) {
                if (text.text == word) {
                    firstAt.emplace(word, number);
                }
            }
        }
    }
    ASSERT_EQ(firstAt.size(), 4U);
    EXPECT_LT(firstAt["BREACH"], firstAt["caution"]);
    EXPECT_LT(firstAt["caution"], firstAt["cannot tell"]);
    EXPECT_LT(firstAt["cannot tell"], firstAt["Checks that meet"]);
}

/// Paper over real, as the stated scale says it.
double ratioOf(const std::string& scale) {
    static const std::map<std::string, double> kInch = {{"full size", 1.0},
                                                        {"6\" = 1'-0\"", 1.0 / 2},
                                                        {"3\" = 1'-0\"", 1.0 / 4},
                                                        {"1-1/2\" = 1'-0\"", 1.0 / 8},
                                                        {"1\" = 1'-0\"", 1.0 / 12},
                                                        {"3/4\" = 1'-0\"", 1.0 / 16},
                                                        {"1/2\" = 1'-0\"", 1.0 / 24},
                                                        {"3/8\" = 1'-0\"", 1.0 / 32},
                                                        {"1/4\" = 1'-0\"", 1.0 / 48}};
    if (const auto found = kInch.find(scale); found != kInch.end()) {
        return found->second;
    }
    return scale.rfind("1:", 0) == 0 ? 1.0 / std::stod(scale.substr(2)) : 0.0;
}

/// The scale stands right of the view's title, on its baseline.
double statedRatio(const Drawing& page, const std::string& title) {
    const auto texts = textsOf(page);
    for (std::size_t i = 0; i + 1 < texts.size(); ++i) {
        if (texts[i].text == title) {
            return ratioOf(texts[i + 1].text);
        }
    }
    return 0.0;
}

/// Rectangles among the walls of exactly that width.
int wallsAsLong(const Drawing& page, double length) {
    int found = 0;
    for (const auto& layer : page.layers) {
        for (const auto& element : layer.elements) {
            const auto* line = std::get_if<drawing::Polyline>(&element);
            if (line && layer.name == "walls" && line->closed && line->pen &&
                line->points.size() == 4) {
                const double width = line->points[1].x - line->points[0].x;
                found += std::abs(width - length) < 1e-6 ? 1 : 0;
            }
        }
    }
    return found;
}

/// The gutter of 72 in is drawn 72 in times the stated scale long: some closed rectangle of the
/// walls has exactly that width.
TEST_P(LayoutSheet, GutterIsDrawnToTheStatedScale) {
    const auto& pages = onceDrawn(cases().front(), GetParam());
    const double ratio = statedRatio(pages.front(), "Front view, cover off");
    ASSERT_GT(ratio, 0.0);
    const double length = 72.0 * 25.4 * ratio;
    int found = 0;
    for (const auto& page : pages) {
        found += wallsAsLong(page, length);
    }
    EXPECT_EQ(found, 2) << "the interiors of the top view and the front view";
}

/// Every conductor is tagged in the front view or, at the least, listed.
TEST_P(LayoutSheet, EveryConductorIsTagged) {
    const auto& sheet = cases().front();
    const auto& pages = onceDrawn(sheet, GetParam());
    std::size_t tagged = 0;
    for (const auto& conductor : sheet.built.layout.conductors) {
        tagged += contains(pages.front(), conductor.tag) ? 1U : 0U;
        EXPECT_TRUE(std::any_of(pages.begin(), pages.end(), [&](const Drawing& page) {
            return contains(page, conductor.tag);
        })) << conductor.tag;
    }
    EXPECT_GE(tagged, sheet.built.layout.conductors.size() * 9 / 10);
}

/// Every tag, name and the title can be searched for in the PDF and in the first page's SVG.
TEST_P(LayoutSheet, TagsNamesAndTitleAreTextInPdfAndSvg) {
    const auto& sheet = cases().front();
    const auto& pages = onceDrawn(sheet, GetParam());
    const QTemporaryDir folder;
    const auto path = folder.filePath(QStringLiteral("sheet.pdf"));
    test::writeFile(path, sheetToPdf(pages));
    const auto run = test::runProgram(QStringLiteral("pdftotext"), {"-layout", path, "-"});
    ASSERT_TRUE(run.good()) << run.err.toStdString();
    const auto text = QString::fromUtf8(run.out);
    const auto find = [&](const std::string& words) {
        EXPECT_TRUE(text.contains(QString::fromStdString(words))) << words;
    };
    find(sheet.built.layout.title);
    for (const auto& conductor : sheet.built.layout.conductors) {
        find(conductor.tag);
    }
    for (const auto& block : sheet.built.layout.blocks) {
        find(block.name);
    }
    const auto svg = pageToSvg(pages.front());
    EXPECT_TRUE(svg.contains("Five workshops on one service"));
    EXPECT_TRUE(svg.contains("Block A"));
}

TEST_P(LayoutSheet, SameLayoutSamePdf) {
    const auto& sheet = cases().front();
    EXPECT_EQ(sheetToPdf(sheetOf(sheet, GetParam())), sheetToPdf(onceDrawn(sheet, GetParam())));
}

INSTANTIATE_TEST_SUITE_P(Papers,
                         LayoutSheet,
                         ::testing::Values(Paper::letter,
                                           Paper::legal,
                                           Paper::tabloid,
                                           Paper::archC,
                                           Paper::archD,
                                           Paper::a4,
                                           Paper::a3,
                                           Paper::a2,
                                           Paper::a1),
                         caseName);

}  // namespace
}  // namespace gw::ui

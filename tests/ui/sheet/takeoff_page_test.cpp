#include "sheet/takeoff_page.h"

#include <gtest/gtest.h>

#include <QString>
#include <QXmlStreamReader>
#include <map>
#include <string>
#include <vector>

#include "support/drawn_layout.h"
#include "takeoff/takeoff.h"

namespace gw::ui {
namespace {

using takeoff::Cell;
using takeoff::Kind;
using takeoff::Table;

/// Texts of all elements of a name, in order, as a reader of XML sees them.
std::vector<std::string> textsOf(const QByteArray& html, const char* element) {
    std::vector<std::string> texts;
    QXmlStreamReader reader(html);
    while (!reader.atEnd()) {
        reader.readNext();
        if (reader.isStartElement() && reader.name() == QLatin1String(element)) {
            texts.push_back(
                reader.readElementText(QXmlStreamReader::IncludeChildElements).toStdString());
        }
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    return texts;
}

layout::Layout named(const std::string& title) {
    layout::Layout layout;
    layout.title = title;
    return layout;
}

const Table kTable{
    "t",
    "A <b>table</b>",
    "Sums & more",
    {{"Tag"}, {"Unknown", Kind::length}, {"Long", Kind::length}, {"Date", Kind::box}},
    {{std::string("</td><script>x</script>"), Cell(), 5.5, Cell()},
     {std::string("\"7\" & '8'"), Cell(), Cell(), Cell()}},
    {"Mind the <gap>"}};

TEST(TakeoffPage, TextsComeBackAsTheyWereWhateverIsInThem) {
    const auto html = takeoffToHtml({kTable}, named("A & B <i>"));
    EXPECT_EQ(textsOf(html, "title"), std::vector<std::string>{"Takeoff of A & B <i>"});
    EXPECT_EQ(textsOf(html, "h2"), std::vector<std::string>{"A <b>table</b>"});
    EXPECT_EQ(textsOf(html, "caption"), std::vector<std::string>{"Sums & more"});
    EXPECT_EQ(textsOf(html, "li"), std::vector<std::string>{"Mind the <gap>"});
    EXPECT_EQ(textsOf(html, "th"), (std::vector<std::string>{"Tag", "Long", "Date"}));
    EXPECT_EQ(textsOf(html, "td"),
              (std::vector<std::string>{
                  "</td><script>x</script>", "5 1/2 in", "", "\"7\" & '8'", "", ""}));
    EXPECT_TRUE(textsOf(html, "script").empty());
}

/// Short forms are only for elements that HTML knows to be empty, and a style sheet is not escaped
/// text to a browser.
TEST(TakeoffPage, ReadsTheSameToAReaderOfHtml) {
    const auto html = QString::fromUtf8(takeoffToHtml({kTable}, named("")));
    EXPECT_TRUE(html.startsWith("<!DOCTYPE html>"));
    EXPECT_EQ(html.count("/>"), 2);
    EXPECT_EQ(html.count("<meta "), 2);
    const auto style =
        html.mid(html.indexOf("<style>"), html.indexOf("</style>") - html.indexOf("<style>"));
    EXPECT_GT(style.size(), 200);
    EXPECT_FALSE(style.contains('&'));
}

TEST(TakeoffPage, HoldsEveryCellOfEveryTable) {
    const auto built = test::drawnLayout();
    std::vector<Table> tables;
    std::vector<std::string> cells;
    for (const auto name : takeoff::tableNames()) {
        tables.push_back(takeoff::tableNamed(name, built));
        for (const auto& row : tables.back().rows) {
            for (const auto i : takeoff::columnsShown(tables.back())) {
                cells.push_back(
                    takeoff::shown(row[i], tables.back().columns[i], built.layout.displayUnit));
            }
        }
    }
    const auto html = takeoffToHtml(tables, built.layout);
    EXPECT_EQ(textsOf(html, "td"), cells);
    EXPECT_EQ(textsOf(html, "h2").size(), tables.size());
    EXPECT_EQ(html, takeoffToHtml(tables, built.layout));
}

TEST(TakeoffPage, AnEmptyTableSaysSo) {
    const Table empty{"t", "T", "B", {{"Tag"}}, {}};
    const auto html = takeoffToHtml({empty}, named("x"));
    EXPECT_TRUE(textsOf(html, "table").empty());
    EXPECT_NE(html.indexOf("Nothing in this layout."), -1);
}

}  // namespace
}  // namespace gw::ui

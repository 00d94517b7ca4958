#include "sheet/takeoff_page.h"

#include <QFile>
#include <QString>
#include <QXmlStreamWriter>
#include <string>
#include <utility>

#include "base/contract.h"
#include "checks/report.h"

namespace gw::ui {
namespace {

using takeoff::Column;
using takeoff::Kind;
using takeoff::Table;

using Attributes = std::vector<std::pair<const char*, std::string>>;

/// Elements of a page, opened and closed. Texts are escaped by the writer.
class Page {
public:
    explicit Page(QByteArray* bytes) : xml_(bytes) {}

    void doctype() { xml_.writeDTD("<!DOCTYPE html>"); }
    void open(const char* name, const Attributes& attributes = {}) {
        xml_.writeStartElement(name);
        write(attributes);
    }
    void close() { xml_.writeEndElement(); }
    void text(const std::string& text) { xml_.writeCharacters(QString::fromStdString(text)); }
    void line() { xml_.writeCharacters("\n"); }
    /// With a text, even an empty one, an element gets an end tag: HTML has no short form.
    void element(const char* name, const std::string& content, const Attributes& attributes = {}) {
        open(name, attributes);
        text(content);
        close();
    }
    /// For elements that HTML knows to be empty.
    void lone(const char* name, const Attributes& attributes) {
        xml_.writeEmptyElement(name);
        write(attributes);
    }

private:
    void write(const Attributes& attributes) {
        for (const auto& [name, value] : attributes) {
            xml_.writeAttribute(name, QString::fromStdString(value));
        }
    }

    QXmlStreamWriter xml_;
};

std::string style() {
    QFile file(":/style/takeoff.css");
    CONTRACT(file.open(QIODevice::ReadOnly));
    return file.readAll().toStdString();
}

/// Short texts, such as tags and sizes, are not to be broken at a hyphen or blank.
std::string classOf(const Column& column, const std::string& content) {
    constexpr std::size_t kShort = 12;
    switch (column.kind) {
        case Kind::text:
            return content.size() <= kShort ? "short" : "text";
        case Kind::box:
            return "box";
        case Kind::count:
        case Kind::number:
        case Kind::length:
        case Kind::lengthUp:
        case Kind::money:
            return "number";
    }
    return "";
}

std::string headingOf(const layout::Layout& layout) {
    return "Takeoff of " + (layout.title.empty() ? "a layout without a title" : layout.title);
}

void writeHead(Page& page, const layout::Layout& layout) {
    page.open("head");
    page.lone("meta", {{"charset", "utf-8"}});
    page.lone("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
    page.element("title", headingOf(layout));
    page.element("style", style());
    page.close();
    page.line();
}

/// What the title block would say, as far as it is stated.
void writeFacts(Page& page, const layout::Layout& layout) {
    const std::pair<const char*, const std::string*> facts[] = {{"Project", &layout.project},
                                                                {"Drawn by", &layout.drawnBy},
                                                                {"Date", &layout.date},
                                                                {"Revision", &layout.revision}};
    std::string said;
    for (const auto& [name, value] : facts) {
        if (!value->empty()) {
            said += (said.empty() ? "" : " · ") + std::string(name) + ": " + *value;
        }
    }
    page.element("h1", headingOf(layout));
    if (!said.empty()) {
        page.element("p", said);
    }
}

void writeContents(Page& page, const std::vector<Table>& tables) {
    page.open("nav");
    for (const auto& table : tables) {
        page.element("a", table.title, {{"href", "#" + table.name}});
        page.line();
    }
    page.close();
    page.line();
}

void writeRows(Page& page,
               const Table& table,
               const std::vector<std::size_t>& some,
               units::LengthUnit unit) {
    page.open("tbody");
    page.line();
    for (const auto& row : table.rows) {
        page.open("tr");
        for (const auto i : some) {
            const auto& column = table.columns[i];
            const auto content = takeoff::shown(row[i], column, unit);
            page.element("td", content, {{"class", classOf(column, content)}});
        }
        page.close();
        page.line();
    }
    page.close();
}

void writeTable(Page& page, const Table& table, units::LengthUnit unit) {
    const auto some = takeoff::columnsShown(table);
    page.open("div", {{"class", "wide"}});
    page.open("table");
    page.element("caption", table.basis);
    page.open("thead");
    page.open("tr");
    for (const auto i : some) {
        const auto head = takeoff::headShown(table.columns[i]);
        page.element("th", head, {{"class", classOf(table.columns[i], "")}, {"scope", "col"}});
    }
    page.close();
    page.close();
    writeRows(page, table, some, unit);
    page.close();
    page.close();
}

void writeSection(Page& page, const Table& table, units::LengthUnit unit) {
    page.open("section", {{"id", table.name}});
    page.element("h2", table.title);
    if (table.rows.empty()) {
        page.element("p", "Nothing in this layout.");
    } else {
        writeTable(page, table, unit);
    }
    if (!table.notes.empty()) {
        page.open("ul");
        for (const auto& note : table.notes) {
            page.element("li", note);
        }
        page.close();
    }
    page.close();
    page.line();
}

void writeCautions(Page& page) {
    page.open("footer");
    for (const auto& caution : checks::cautions()) {
        page.element("p", caution);
    }
    page.close();
    page.line();
}

}  // namespace

QByteArray takeoffToHtml(const std::vector<Table>& tables, const layout::Layout& layout) {
    QByteArray bytes;
    Page page(&bytes);
    page.doctype();
    page.line();
    page.open("html", {{"lang", "en"}});
    writeHead(page, layout);
    page.open("body");
    page.line();
    writeFacts(page, layout);
    writeContents(page, tables);
    for (const auto& table : tables) {
        writeSection(page, table, layout.displayUnit);
    }
    writeCautions(page);
    page.close();
    page.close();
    page.line();
    return bytes;
}

}  // namespace gw::ui

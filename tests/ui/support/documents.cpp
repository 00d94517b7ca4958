#include "ui/support/documents.h"

#include <gtest/gtest.h>

#include "files/layout_file.h"
#include "support/shipped_shelf.h"
#include "ui/support/process.h"

namespace gw::test {

layout::Layout layoutNamed(const char* name) {
    const auto path = QStringLiteral(GW_SOURCE_DIR "/tests/data/layouts/%1.json").arg(name);
    const auto layout =
        files::readLayout(readWholeFile(path).toStdString(), path.toStdString(), shippedShelf());
    EXPECT_TRUE(layout) << toLine(layout.error());
    return layout.value_or(layout::Layout{});
}

layout::Layout smallLayout(const std::string& title) {
    auto layout = layoutNamed("small");
    layout.title = title;
    return layout;
}

std::unique_ptr<ui::Document> documentOf(const layout::Layout& layout) {
    auto live = live::LiveLayout::create(layout, shippedShelf());
    EXPECT_TRUE(live) << toLine(live.error());
    return std::make_unique<ui::Document>(std::move(*live));
}

void retitle(ui::Document& document, const std::string& title) {
    auto after = document.layout();
    after.title = title;
    ASSERT_TRUE(document.edit(QStringLiteral("Rename the layout"), after));
}

QByteArray bytesOf(const layout::Layout& layout) {
    return QByteArray::fromStdString(files::writeLayout(layout));
}

}  // namespace gw::test

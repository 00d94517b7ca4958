#include "ui/panels/panel_bench.h"

#include <QApplication>
#include <QDir>
#include <QPalette>
#include <QPixmap>
#include <QWidget>
#include <fstream>
#include <sstream>

#include "base/contract.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

namespace gw::test {
namespace {

layout::Layout readSample(const std::string& name) {
    const std::string path = std::string(GW_SOURCE_DIR) + "/samples/" + name + "/layout.json";
    std::ostringstream bytes;
    bytes << std::ifstream(path).rdbuf();
    const auto layout = files::readLayout(bytes.str(), path, shippedShelf());
    CONTRACT(layout.has_value());
    return *layout;
}

QPalette darkPalette() {
    QPalette dark(QColor(45, 45, 48));
    dark.setColor(QPalette::Base, QColor(30, 30, 32));
    dark.setColor(QPalette::AlternateBase, QColor(38, 38, 40));
    return dark;
}

}  // namespace

PanelBench::PanelBench(const char* sample) {
    auto live = live::LiveLayout::create(readSample(sample), shippedShelf());
    CONTRACT(live.has_value());
    document = std::make_unique<ui::Document>(std::move(*live));
}

void handleEvents() {
    QApplication::processEvents();
    QApplication::processEvents();
}

void keepPicture(QWidget& widget, const QString& name, QSize size) {
    const QString folder = qEnvironmentVariable("GW_PANELS_TO");
    if (folder.isEmpty()) {
        return;
    }
    QDir().mkpath(folder);
    widget.resize(size);
    widget.show();
    handleEvents();
    widget.grab().save(folder + '/' + name + QStringLiteral(".png"));
    const QPalette light = QApplication::palette();
    QApplication::setPalette(darkPalette());
    handleEvents();
    widget.grab().save(folder + '/' + name + QStringLiteral("-dark.png"));
    QApplication::setPalette(light);
    handleEvents();
}

}  // namespace gw::test

#include "app/window.h"

#include <QApplication>
#include <QFileInfo>
#include <QIcon>
#include <iostream>
#include <string_view>

#include "app/help_pages.h"
#include "app/messages.h"
#include "app/shelf.h"
#include "checks/help.h"
#include "window/main_window.h"

namespace gw::app {
namespace {

constexpr int kBadInput = 2;

bool hasScreen() {
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
        if (!qEnvironmentVariableIsEmpty(name)) {
            return true;
        }
    }
    return false;
}

int complain(const std::string& line) {
    std::cerr << "gutterwright: " << line << "\n";
    return kBadInput;
}

}  // namespace

bool wantsWindow(int argc, char** argv) {
    if (argc == 1) {
        return true;
    }
    const std::string_view first = argv[1];
    const bool named = first.size() > 5 && first.substr(first.size() - 5) == ".json";
    return argc == 2 && !first.empty() && first.front() != '-' &&
           (named || QFileInfo(QString::fromLocal8Bit(argv[1])).isFile());
}

int runWindow(int argc, char** argv) {
    if (!hasScreen()) {
        return complain(
            "no screen to open the window on (gutterwright --help shows what can be "
            "done without)");
    }
    printOnlyErrors();
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("Gutterwright"));
    QApplication::setDesktopFileName(QStringLiteral("gutterwright"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/desktop/gutterwright.svg")));
    auto shelf = loadShelf({});
    if (!shelf) {
        return complain(toLine(shelf.error()));
    }
    ui::MainWindow* shown = nullptr;
    const auto help = [&shown](checks::Check check) {
        return QString::fromStdString(
            checks::helpText(helpPage(check), check, {shown->document().layout().edition}));
    };
    ui::MainWindow window(std::move(*shelf), help, ui::usersPlaces());
    shown = &window;
    if (argc == 2) {
        if (const auto opened = window.open(QString::fromLocal8Bit(argv[1])); !opened) {
            return complain(toLine(opened.error()));
        }
    } else {
        window.fileActions().showStart();
    }
    window.show();
    return QApplication::exec();
}

}  // namespace gw::app

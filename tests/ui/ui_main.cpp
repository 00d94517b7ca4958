#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>

#include "ui/support/roles.h"

int main(int argc, char** argv) {
    // Tests are discovered by running the program at build time, before any environment is set.
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    qputenv("QT_SCALE_FACTOR", "1");
    ::testing::InitGoogleTest(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QApplication::setStyle(QStringLiteral("Fusion"));
    QApplication app(argc, argv);
    app.setQuitOnLastWindowClosed(false);
    const int played = gw::test::playRole(QApplication::arguments());
    return played >= 0 ? played : RUN_ALL_TESTS();
}

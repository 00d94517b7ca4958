#include "window/places.h"

#include <QCoreApplication>
#include <QDir>
#include <QStandardPaths>

namespace gw::ui {
namespace {

QString homeOr(QStandardPaths::StandardLocation usual) {
    const QString own = qEnvironmentVariable("GUTTERWRIGHT_HOME");
    return own.isEmpty() ? QStandardPaths::writableLocation(usual) : QDir(own).absolutePath();
}

/// Installed beside the program's folder, or in the source tree that it was built in.
QString samplesFolder() {
    const QDir program(QCoreApplication::applicationDirPath());
    for (const char* way : {"../share/gutterwright/samples", "../../../samples"}) {
        const QString folder = QDir::cleanPath(program.filePath(QLatin1String(way)));
        if (QDir(folder).exists()) {
            return folder;
        }
    }
    return {};
}

}  // namespace

Places usersPlaces() {
    return {homeOr(QStandardPaths::AppConfigLocation) + QStringLiteral("/window.ini"),
            homeOr(QStandardPaths::AppLocalDataLocation) + QStringLiteral("/recovery"),
            samplesFolder()};
}

}  // namespace gw::ui

#include "app/messages.h"

#include <QString>
#include <QtGlobal>
#include <iostream>

namespace gw::app {
namespace {

void onlyErrors(QtMsgType type, const QMessageLogContext& /*context*/, const QString& text) {
    if (type == QtCriticalMsg || type == QtFatalMsg) {
        std::cerr << "gutterwright: " << text.toStdString() << "\n";
    }
}

}  // namespace

void printOnlyErrors() {
    qInstallMessageHandler(onlyErrors);
}

}  // namespace gw::app

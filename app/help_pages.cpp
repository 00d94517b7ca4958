#include "app/help_pages.h"

#include <QFile>

#include "base/contract.h"

namespace gw::app {

checks::HelpPage helpPage(checks::Check check) {
    const std::string path = ":/help/checks/" + std::string(checks::checkName(check)) + ".md";
    QFile file(QString::fromStdString(path));
    CONTRACT(file.open(QIODevice::ReadOnly));
    auto page = checks::parseHelpPage(file.readAll().toStdString(), path);
    CONTRACT(page.has_value());
    return std::move(*page);
}

}  // namespace gw::app

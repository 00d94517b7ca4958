#include "app/drawings.h"

#include <QHashSeed>
#include <iostream>

#include "app/messages.h"
#include "sheet/export.h"

namespace gw::app {

bool Application::chooseOffscreen() {
    printOnlyErrors();
    // Fonts are cut to the glyphs in use in the order of a hash: same input, same bytes.
    QHashSeed::setDeterministicGlobalSeed();
    return !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM") ||
           qputenv("QT_QPA_PLATFORM", "offscreen");
}

Result<drawing::Paper> paperNamed(const std::string& name, drawing::Paper usual) {
    const auto paper = name.empty() ? usual : drawing::paperFromText(name);
    if (!paper) {
        return fail({ErrorCode::unknown,
                     "no such paper",
                     "",
                     "--paper",
                     "Letter, Legal, Tabloid, ARCH C, ARCH D, A4, A3, A2 or A1",
                     name});
    }
    return *paper;
}

Result<void> drawableTo(const std::string& file, const std::string& option) {
    if (file.ends_with(".pdf") || file.ends_with(".svg")) {
        return {};
    }
    return fail({ErrorCode::unknown,
                 "it is written as PDF or SVG",
                 "",
                 option,
                 "a name that ends in .pdf or .svg",
                 file});
}

Result<void> writePages(const std::vector<drawing::Drawing>& pages, const std::string& file) {
    const auto written = ui::saveSheet(pages, file);
    if (!written) {
        return fail(written.error());
    }
    for (const auto& path : *written) {
        std::cout << path << "\n";
    }
    return {};
}

}  // namespace gw::app

#pragma once

#include <QGuiApplication>
#include <string>
#include <vector>

#include "base/result.h"
#include "drawing/sheet.h"

/// What the verbs that draw share.
namespace gw::app {

/// Qt's part of drawing without a window. One at a time.
class Application {
private:
    static bool chooseOffscreen();

    bool platformChosen_ = chooseOffscreen();  // before the application reads it
    int count_ = 1;
    char name_[13] = "gutterwright";
    char* arguments_[2] = {name_, nullptr};
    QGuiApplication application_{count_, arguments_};
};

/// The paper asked for by --paper, or the verb's own where nothing is. Error where there is no
/// such.
Result<drawing::Paper> paperNamed(const std::string& name, drawing::Paper usual);

/// Error where the name after `option` is neither of a PDF nor of an SVG.
Result<void> drawableTo(const std::string& file, const std::string& option);

/// Writes them and prints where to.
Result<void> writePages(const std::vector<drawing::Drawing>& pages, const std::string& file);

}  // namespace gw::app

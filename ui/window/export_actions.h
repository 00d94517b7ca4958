#pragma once

#include <QActionGroup>
#include <QMenu>
#include <QObject>
#include <functional>

#include "base/result.h"
#include "canvas/board.h"
#include "drawing/sheet.h"

namespace gw::ui {

/// What leaves the window as files beside the layout: the sheet, the report, the takeoff and
/// its drawings, the drilling template, a picture of the board. Each file is whole or not there at
/// all.
class ExportActions : public QObject {
    Q_OBJECT
public:
    /// complain: shows why something could not be written.
    ExportActions(const Bench& bench,
                  Board& board,
                  QWidget& window,
                  std::function<void(const Error&)> complain);

    /// Their entries, at the menu's end.
    void addTo(QMenu& menu);

    /// For asking nothing. What ends in .pdf is a PDF of all pages, .svg a file a page.
    Result<void> saveSheetTo(const QString& path);
    /// What ends in .json is the report for scripts, all else the one for people.
    Result<void> saveReportTo(const QString& path, const QString& nameOfLayout);
    /// All tables of the takeoff: .html a page that prints well, .json for scripts, else text.
    Result<void> saveTakeoffTo(const QString& path);
    /// At full size, on A4 where the layout is shown in millimetres, else on Letter. Error missing
    /// where nothing is drilled.
    Result<void> saveTemplateTo(const QString& path);
    /// A card for each conductor, the landing order step by step, and labels to be cut out: on the
    /// same papers. Error missing where there is no conductor.
    Result<void> saveCardsTo(const QString& path);
    Result<void> saveStepsTo(const QString& path);
    Result<void> saveLabelsTo(const QString& path);
    /// The board as it is seen, at twice its size, as PNG.
    Result<void> savePictureTo(const QString& path);

    drawing::Paper paper() const { return paper_; }
    void setPaper(drawing::Paper paper) { paper_ = paper; }

private:
    void addPapersTo(QMenu& menu);
    /// Of what is printed on office paper.
    drawing::Paper officePaper() const;
    void ask(const QString& title,
             const QStringList& filters,
             const std::function<Result<void>(const QString&)>& save);

    Bench bench_;
    Board& board_;
    QWidget& window_;
    std::function<void(const Error&)> complain_;
    QActionGroup papers_{this};
    drawing::Paper paper_ = drawing::SheetOptions{}.paper;
};

}  // namespace gw::ui

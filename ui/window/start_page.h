#pragma once

#include <QGroupBox>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>

#include "document/recovery_folder.h"
#include "window/new_gutter_form.h"
#include "window/samples.h"

namespace gw::ui {

/// What the window shows while there is no layout: begin a gutter, open a file or a sample, or go
/// on with unsaved work. Asks nothing and does nothing by itself.
class StartPage : public QScrollArea {
    Q_OBJECT
public:
    /// shelf: outlives the page.
    StartPage(const std::vector<Sample>& samples, const parts::Shelf& shelf);

    void showRecent(const QStringList& paths);
    void showLeftovers(const std::vector<Leftover>& leftovers);

    QListWidget& samples() { return *samples_; }
    QListWidget& spoilt() { return *spoilt_; }
    QListWidget& recent() { return *recent_; }
    QListWidget& leftovers() { return *leftovers_; }
    NewGutterForm& form() { return *form_; }

Q_SIGNALS:
    void newWanted(const gw::layout::Layout& layout);
    void fileWanted();
    void recentWanted(const QString& path);
    void recentForgotten();
    void sampleWanted(const QString& path);
    void recoveryWanted(const QString& leftoverPath);

private:
    QWidget* makeBeginning();
    QWidget* makeRecent();
    QWidget* makeLeftovers();
    QWidget* makeSamples(const std::vector<Sample>& samples);
    QListWidget* makeList(const QString& name, void (StartPage::*wanted)(const QString&));
    void drawNext();

    const parts::Shelf& shelf_;
    NewGutterForm* form_ = nullptr;
    QListWidget* recent_ = nullptr;
    QPushButton* forget_ = nullptr;
    QGroupBox* leftoversBox_ = nullptr;
    QListWidget* leftovers_ = nullptr;
    QListWidget* samples_ = nullptr;
    QListWidget* spoilt_ = nullptr;
    QTimer drawing_;
    int drawn_ = 0;  ///< samples with their picture
};

}  // namespace gw::ui

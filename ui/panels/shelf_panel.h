#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTreeWidget>

#include "panels/panel.h"

namespace gw::ui {

/// The parts at hand, to be searched and placed: by words, ports, the size and metal of a conductor
/// they must take, fine strand, location, bolting down, and whether they fit this gutter. Enter or
/// a double click takes a part in hand; it can be dragged onto the board.
class ShelfPanel : public Panel {
    Q_OBJECT
public:
    explicit ShelfPanel(const Bench& bench, QWidget* parent = nullptr);

    QTreeWidget* list() const { return list_; }
    QLineEdit* words() const { return words_; }
    QComboBox* size() const { return size_; }
    QComboBox* ports() const { return ports_; }
    QCheckBox* fits() const { return fits_; }
    /// "3 of 14 parts".
    QString count() const { return count_->text(); }

Q_SIGNALS:
    void partWanted(const gw::parts::PartId& part);

protected:
    void refresh() override;

private:
    QWidget* makeFilters();
    bool wanted(const parts::Part& part) const;
    void showNote();

    QLineEdit* words_;
    QComboBox* ports_;
    QComboBox* size_;
    QComboBox* metal_;
    QComboBox* location_;
    QCheckBox* fine_;
    QCheckBox* bolted_;
    QCheckBox* fits_;
    QTreeWidget* list_;
    QLabel* count_;
    QLabel* note_;
};

}  // namespace gw::ui

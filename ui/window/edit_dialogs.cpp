#include "window/edit_dialogs.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <array>

#include "editing/copy.h"
#include "editing/field_forms.h"
#include "panels/panel_text.h"

namespace gw::ui {
namespace {

/// Three lengths along the axes of the gutter. What cannot be read is said below, and Ok waits.
class ShiftForm : public QDialog {
public:
    ShiftForm(QWidget* parent, units::LengthUnit unit, const QString& title, const Vec3& usual)
        : QDialog(parent), unit_(unit), rows_(new QFormLayout(this)), complaint_(new QLabel) {
        setWindowTitle(title);
        const std::array<QString, 3> labels{
            QObject::tr("To the &right"), QObject::tr("&Up"), QObject::tr("Toward the &cover")};
        const std::array<double, 3> values{usual.x, usual.y, usual.z};
        for (std::size_t i = 0; i < fields_.size(); ++i) {
            fields_[i] =
                new QLineEdit(toQString(editing::lengthText(units::Inches::of(values[i]), unit)));
            fields_[i]->selectAll();
            connect(fields_[i], &QLineEdit::textChanged, this, [this] { read(); });
            rows_->addRow(labels[i], fields_[i]);
        }
    }

    QFormLayout& rows() { return *rows_; }
    const Vec3& shift() const { return shift_; }

    bool ask() {
        buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
        connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
        connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
        complaint_->setWordWrap(true);
        rows_->addRow(complaint_);
        rows_->addRow(buttons_);
        read();
        return exec() == QDialog::Accepted;
    }

private:
    void read() {
        std::array<double, 3> read{};
        QString complaint;
        for (std::size_t i = 0; i < fields_.size(); ++i) {
            const auto length =
                units::parseLength(fields_[i]->text().trimmed().toStdString(), unit_);
            if (length) {
                read[i] = length->in();
            } else if (complaint.isEmpty()) {
                complaint = errorText(length.error());
            }
        }
        shift_ = {read[0], read[1], read[2]};
        complaint_->setText(complaint);
        if (buttons_ != nullptr) {
            buttons_->button(QDialogButtonBox::Ok)->setEnabled(complaint.isEmpty());
        }
    }

    units::LengthUnit unit_;
    QFormLayout* rows_;
    QLabel* complaint_;
    QDialogButtonBox* buttons_ = nullptr;
    std::array<QLineEdit*, 3> fields_{};
    Vec3 shift_;
};

}  // namespace

std::optional<Vec3> askShift(QWidget* parent, units::LengthUnit unit, const QString& what) {
    ShiftForm form(parent, unit, QObject::tr("Move %1").arg(what), {});
    return form.ask() ? std::optional(form.shift()) : std::nullopt;
}

std::optional<RowAnswer> askRow(QWidget* parent,
                                units::LengthUnit unit,
                                const QString& what,
                                const Vec3& usual) {
    ShiftForm form(parent, unit, QObject::tr("Copies of %1 in a row").arg(what), usual);
    auto* copies = new QSpinBox;
    copies->setRange(1, editing::kMostCopies);
    form.rows().insertRow(0, QObject::tr("Co&pies"), copies);
    form.rows().insertRow(1, new QLabel(QObject::tr("From one to the next:")));
    if (!form.ask()) {
        return std::nullopt;
    }
    return RowAnswer{copies->value(), form.shift()};
}

}  // namespace gw::ui

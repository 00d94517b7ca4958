#include "window/dialogs.h"

#include <QCheckBox>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>

#include "base/contract.h"
#include "editing/item.h"
#include "panels/panel_text.h"
#include "window/choice.h"
#include "window/new_gutter_form.h"

namespace gw::ui {
namespace {

/// A form with Ok and Cancel under it.
class Form : public QDialog {
public:
    Form(const QString& title, QWidget* parent) : QDialog(parent) {
        setWindowTitle(title);
        rows_ = new QFormLayout(this);
    }
    void row(const QString& label, QWidget* field) { rows_->addRow(label, field); }
    void wideRow(QWidget* field) { rows_->addRow(field); }
    /// Whether it was answered.
    bool ask() {
        auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
        connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
        connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
        rows_->addRow(buttons);
        return exec() == QDialog::Accepted;
    }

private:
    QFormLayout* rows_;
};

}  // namespace

std::optional<layout::Layout> askNewGutter(QWidget* parent) {
    Form form(QObject::tr("New gutter"), parent);
    auto* gutter = new NewGutterForm;
    form.wideRow(gutter);
    return form.ask() ? std::optional(gutter->chosen()) : std::nullopt;
}

std::optional<RacewayAnswer> askRaceway(QWidget* parent) {
    Form form(QObject::tr("Raceway"), parent);
    auto* raceway = new Choice;
    raceway->offer(standards::allRaceways(), standards::racewayText, true);
    auto* size = new Choice;
    size->offer(
        standards::TradeSize::all(), [](const auto& one) { return one.text(); }, true);
    form.row(QObject::tr("&Raceway"), raceway);
    form.row(QObject::tr("Trade &size"), size);
    if (!form.ask()) {
        return std::nullopt;
    }
    return RacewayAnswer{raceway->chosen(standards::allRaceways()),
                         size->chosen(standards::TradeSize::all())};
}

std::optional<layout::Circuit> askCircuit(QWidget* parent, const layout::Layout& layout) {
    Form form(QObject::tr("New circuit"), parent);
    auto* name = new QLineEdit;
    auto* role = new Choice;
    role->offer(layout::allRoles(), layout::roleText, false);
    auto* sets = new QSpinBox;
    sets->setRange(1, 20);
    auto* phases = new QWidget;
    auto* row = new QHBoxLayout(phases);
    row->setContentsMargins(0, 0, 0, 0);
    std::vector<QCheckBox*> boxes;
    for (const layout::Phase phase : layout::allPhases()) {
        boxes.push_back(new QCheckBox(toQString(layout::phaseText(phase))));
        boxes.back()->setChecked(phase != layout::Phase::g);
        row->addWidget(boxes.back());
    }
    auto* joins = new Choice;
    joins->offer(
        layout.circuits, [&](const auto& one) { return editing::itemName(layout, one.id); }, true);
    form.row(QObject::tr("&Name"), name);
    form.row(QObject::tr("&Role"), role);
    form.row(QObject::tr("Sets in &parallel"), sets);
    form.row(QObject::tr("Phases"), phases);
    form.row(QObject::tr("&Tapped from"), joins);
    if (!form.ask()) {
        return std::nullopt;
    }
    layout::Circuit circuit;
    circuit.name = name->text().trimmed().toStdString();
    circuit.role = *role->chosen(layout::allRoles());
    circuit.sets = sets->value();
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (boxes[i]->isChecked()) {
            circuit.phases.push_back(layout::allPhases()[i]);
        }
    }
    if (const auto from = joins->chosen(layout.circuits)) {
        circuit.joins = from->id;
    }
    return circuit;
}

std::optional<ConductorsAnswer> askConductors(QWidget* parent,
                                              const layout::Layout& layout,
                                              bool withEntry) {
    CONTRACT(!layout.circuits.empty() && (!withEntry || !layout.entries.empty()));
    Form form(withEntry ? QObject::tr("Fan in a circuit") : QObject::tr("Draw conductors"), parent);
    auto* circuit = new Choice;
    circuit->offer(
        layout.circuits, [&](const auto& one) { return editing::itemName(layout, one.id); }, false);
    auto* entry = new Choice;
    entry->offer(
        layout.entries, [&](const auto& one) { return editing::itemName(layout, one.id); }, false);
    const auto sizes = units::WireSize::all();
    auto* size = new Choice;
    size->offer(
        sizes, [](const auto& one) { return one.text(); }, false);
    size->setCurrentText(toQString(units::WireSize::of("250").text()));
    auto* metal = new Choice;
    metal->offer(standards::allMetals(), standards::metalText, true);
    auto* insulation = new Choice;
    insulation->offer(standards::allInsulations(), standards::insulationText, true);
    auto* stranding = new Choice;
    stranding->offer(standards::allStrandings(), standards::strandingText, true);
    form.row(QObject::tr("&Circuit"), circuit);
    if (withEntry) {
        form.row(QObject::tr("&Entry"), entry);
    }
    form.row(QObject::tr("&Size"), size);
    form.row(QObject::tr("&Metal"), metal);
    form.row(QObject::tr("&Insulation"), insulation);
    form.row(QObject::tr("S&tranding"), stranding);
    if (!form.ask()) {
        return std::nullopt;
    }
    ConductorsAnswer answer;
    answer.circuit = circuit->chosen(layout.circuits)->id;
    answer.kind = {*size->chosen(sizes),
                   metal->chosen(standards::allMetals()),
                   insulation->chosen(standards::allInsulations()),
                   stranding->chosen(standards::allStrandings())};
    if (withEntry) {
        answer.entry = entry->chosen(layout.entries)->id;
    }
    return answer;
}

}  // namespace gw::ui

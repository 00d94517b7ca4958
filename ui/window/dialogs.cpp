#include "window/dialogs.h"

#include <QCheckBox>
#include <QComboBox>
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
#include "standards/tables.h"

namespace gw::ui {
namespace {

constexpr int kNotStated = -1;

/// Choices with the index of their value, where one may be left open with "not stated" first.
class Choice : public QComboBox {
public:
    template <class Values, class Text>
    void offer(const Values& values, Text text, bool mayBeOpen) {
        if (mayBeOpen) {
            addItem(QObject::tr("not stated"), kNotStated);
        }
        int index = 0;
        for (const auto& value : values) {
            addItem(toQString(std::string(text(value))), index++);
        }
    }
    template <class Values>
    auto chosen(const Values& values) const {
        using Value = std::remove_cvref_t<decltype(*values.begin())>;
        const int index = currentData().toInt();
        return index == kNotStated ? std::optional<Value>()
                                   : std::optional<Value>(*(values.begin() + index));
    }
};

/// A form with Ok and Cancel under it.
class Form : public QDialog {
public:
    Form(const QString& title, QWidget* parent) : QDialog(parent) {
        setWindowTitle(title);
        rows_ = new QFormLayout(this);
    }
    void row(const QString& label, QWidget* field) { rows_->addRow(label, field); }
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

std::string inches(units::Inches length) {
    return units::formatInches(length);
}

/// Usual stock: 10 x 10 in, 60 in long.
constexpr int kUsualSection = 6;
constexpr int kUsualLength = 7;

}  // namespace

std::optional<layout::Layout> askNewGutter(QWidget* parent) {
    const auto sections = standards::stockSections();
    const auto lengths = standards::stockLengths();
    Form form(QObject::tr("New gutter"), parent);
    auto* section = new Choice;
    section->offer(
        sections,
        [](const auto& one) { return inches(one.value.width) + " x " + inches(one.value.depth); },
        false);
    section->setCurrentIndex(kUsualSection);
    auto* length = new Choice;
    length->offer(
        lengths, [](const auto& one) { return inches(one.value); }, false);
    length->setCurrentIndex(kUsualLength);
    auto* article = new Choice;
    article->offer(standards::allArticles(), standards::articleText, false);
    auto* location = new Choice;
    location->offer(standards::allLocations(), standards::locationText, true);
    form.row(QObject::tr("&Section"), section);
    form.row(QObject::tr("&Length"), length);
    form.row(QObject::tr("&Kind"), article);
    form.row(QObject::tr("L&ocation"), location);
    if (!form.ask()) {
        return std::nullopt;
    }
    layout::Layout layout;
    layout.title = QObject::tr("New gutter").toStdString();
    layout.gutter.article = *article->chosen(standards::allArticles());
    const auto stock = section->chosen(sections)->value;
    layout.gutter.inside = {
        length->chosen(lengths)->value.in(), stock.width.in(), stock.depth.in()};
    layout.surroundings.location = location->chosen(standards::allLocations());
    return layout;
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

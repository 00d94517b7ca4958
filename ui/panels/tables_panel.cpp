#include "panels/tables_panel.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "editing/place.h"
#include "panels/findings_model.h"
#include "panels/panel_text.h"

namespace gw::ui {
namespace {

using editing::Owner;
using editing::Owners;

template <class Things>
Owners ownersIn(const Things& things) {
    Owners owners;
    for (const auto& thing : things) {
        owners.emplace_back(thing.id);
    }
    return owners;
}

/// Systems are not on the board: nothing to be selected there.
std::optional<Item> itemOf(const Owner& owner) {
    return std::visit(
        [](const auto& id) -> std::optional<Item> {
            if constexpr (std::is_constructible_v<Item, decltype(id)>) {
                return Item(id);
            } else {
                return std::nullopt;
            }
        },
        owner);
}

template <class Id>
std::optional<std::size_t> rowOf(const layout::Layout& layout, const Owner& owner) {
    const auto* id = std::get_if<Id>(&owner);
    return id != nullptr ? editing::indexOf(layout, *id) : std::nullopt;
}

WorkedCell pathLength(const Document& document, const Owner& owner) {
    const auto row = rowOf<layout::ConductorId>(document.layout(), owner);
    if (!row) {
        return {};
    }
    const double inches = document.built().conductors[*row].built.path.length().in();
    return {quantityText(checks::Quantity{inches, checks::Quantity::Unit::inches},
                         document.layout().displayUnit),
            inches};
}

WorkedCell bends(const Document& document, const Owner& owner) {
    const auto row = rowOf<layout::ConductorId>(document.layout(), owner);
    if (!row) {
        return {};
    }
    const auto count = document.layout().conductors[*row].corners.size();
    return {QString::number(count), static_cast<double>(count)};
}

bool takes(const layout::Conductor& conductor, const layout::BlockId& block, const auto& port) {
    const auto in = [&](const layout::End& end) {
        const auto* at = std::get_if<layout::InPort>(&end);
        return at != nullptr && at->block == block && at->port == port;
    };
    return in(conductor.from) || in(conductor.to) ||
           std::any_of(conductor.passes.begin(), conductor.passes.end(), [&](const auto& pass) {
               return pass.block == block && pass.port == port;
           });
}

WorkedCell freePorts(const Document& document, const Owner& owner) {
    const auto& layout = document.layout();
    const auto row = rowOf<layout::BlockId>(layout, owner);
    if (!row) {
        return {};
    }
    const auto& ports = document.built().blocks[*row].part->ports;
    const auto free = std::count_if(ports.begin(), ports.end(), [&](const parts::Port& port) {
        return std::none_of(
            layout.conductors.begin(), layout.conductors.end(), [&](const auto& conductor) {
                return takes(conductor, layout.blocks[*row].id, port.name);
            });
    });
    return {FieldTable::tr("%1 of %2").arg(free).arg(ports.size()), static_cast<double>(free)};
}

}  // namespace

TablesPanel::TablesPanel(const Bench& bench, QWidget* parent)
    : Panel(bench, parent), tabs_(new QTabWidget) {
    setAccessibleName(tr("Tables of what is in the gutter"));
    tabs_->setDocumentMode(true);
    tabs_->setAccessibleName(tr("Kind of thing"));
    add(conductors, tr("Conductors"), conductorColumns());
    add(blocks, tr("Blocks"), blockColumns());
    add(entries, tr("Entries"), entryColumns());
    add(circuits,
        tr("Circuits"),
        {{tr("Name"), "name"},
         {tr("Role"), "role"},
         {tr("System"), "system"},
         {tr("Sets"), "sets"},
         {tr("Phases"), "phases"},
         {tr("Tapped from"), "joins"},
         {tr("Device (A)"), "device"},
         {tr("Load (A)"), "load"},
         {tr("Tap rule"), "tap rule"},
         {tr("Supplies"), "supplies"},
         verdictColumn()});
    add(systems,
        tr("Systems"),
        {{tr("Name"), "name"},
         {tr("Between phases (V)"), "volts"},
         {tr("To ground (V)"), "volts to ground"},
         {tr("Fault current (kA)"), "fault current"}});
    tabs_->setCornerWidget(makeAdders());
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 4, 4, 4);
    column->addWidget(tabs_);
    connect(&selection(), &Selection::changed, this, &TablesPanel::followSelection);
    connect(&document(), &Document::gestureChanged, this, &TablesPanel::refreshSoon);
}

FieldTable* TablesPanel::add(Kind kind, const QString& title, std::vector<TableColumn> columns) {
    auto* table = new FieldTable(bench(), std::move(columns));
    table->view()->setAccessibleName(title);
    tables_.at(kind) = table;
    tabs_->addTab(table, title);
    connect(table, &FieldTable::selectionChanged, this, [this, table] { tellSelection(*table); });
    connect(table, &FieldTable::rowActivated, this, &TablesPanel::showOnBoard);
    return table;
}

std::vector<TableColumn> TablesPanel::conductorColumns() const {
    const auto& shown = document();
    return {{tr("Tag"), "tag"},
            {tr("Circuit"), "circuit"},
            {tr("Set"), "set"},
            {tr("Phase"), "phase"},
            {tr("Size"), "size"},
            {tr("Metal"), "metal"},
            {tr("Insulation"), "insulation"},
            {tr("Strand"), "strand"},
            {tr("Colour"), "colour"},
            {tr("From"), "from"},
            {tr("Strip there"), "from strip"},
            {tr("To"), "to"},
            {tr("Strip there"), "to strip"},
            {tr("In the gutter"),
             {},
             [&shown](const Owner& owner) { return pathLength(shown, owner); }},
            {tr("Bends"), {}, [&shown](const Owner& owner) { return bends(shown, owner); }},
            verdictColumn()};
}

std::vector<TableColumn> TablesPanel::blockColumns() const {
    const auto& shown = document();
    return {
        {tr("Name"), "name"},
        {tr("Phase"), "phase"},
        {tr("Part"), "part"},
        {tr("Along (x)"), "x"},
        {tr("Height (y)"), "y"},
        {tr("Depth (z)"), "z"},
        {tr("Turned"), "attitude"},
        {tr("Bolted down"), "mounted"},
        {tr("Free ports"), {}, [&shown](const Owner& owner) { return freePorts(shown, owner); }},
        verdictColumn()};
}

std::vector<TableColumn> TablesPanel::entryColumns() const {
    return {{tr("Name"), "name"},
            {tr("Leads to"), "leads to"},
            {tr("Wall"), "wall"},
            {tr("Raceway"), "raceway"},
            {tr("Trade size"), "trade size"},
            {tr("First place on the wall"), "u"},
            {tr("Second"), "v"},
            {tr("Length beyond"), "raceway length"},
            {tr("Bushing"), "insulating bushing"},
            {tr("Bonded by"), "bonded by"},
            verdictColumn()};
}

QWidget* TablesPanel::makeAdders() {
    auto* adders = new QWidget;
    auto* row = new QHBoxLayout(adders);
    row->setContentsMargins(0, 0, 0, 0);
    auto* circuit = new QPushButton(tr("Add circuit…"));
    auto* system = new QPushButton(tr("Add system"));
    row->addWidget(circuit);
    row->addWidget(system);
    connect(circuit, &QPushButton::clicked, this, &TablesPanel::circuitWanted);
    connect(system, &QPushButton::clicked, this, &TablesPanel::addSystem);
    return adders;
}

void TablesPanel::addSystem() {
    layout::System system;
    system.name = tr("System %1").arg(document().layout().systems.size() + 1).toStdString();
    if (const auto after = editing::addSystem(document().built(), system)) {
        if (document().edit(tr("Add system"), *after)) {
            turnTo(systems);
        }
    }
}

// ---- verdicts -------------------------------------------------------------------------------

/// The gravest first; what meets only where nothing else is.
TableColumn TablesPanel::verdictColumn() const {
    return {tr("Verdict"), {}, [this](const Owner& owner) -> WorkedCell {
                const auto item = itemOf(owner);
                const auto found = verdicts_.find(item ? editing::idText(*item) : std::string());
                if (found == verdicts_.end()) {
                    return {};
                }
                for (std::size_t i = 0; i < kVerdictOrder.size(); ++i) {
                    const int count = found->second.at(i);
                    if (count > 0) {
                        return {countedVerdict(kVerdictOrder.at(i), count),
                                static_cast<double>(i) * 1e6 - count,
                                verdictIcon(kVerdictOrder.at(i))};
                    }
                }
                return {};
            }};
}

void TablesPanel::judge() {
    verdicts_.clear();
    for (const auto& finding : document().findings()) {
        const auto place = std::find(kVerdictOrder.begin(), kVerdictOrder.end(), finding.verdict) -
                           kVerdictOrder.begin();
        for (const auto& subject : finding.subjects) {
            ++verdicts_[editing::idText(subject)].at(static_cast<std::size_t>(place));
        }
    }
}

/// A drag is followed at its end: the board shows what it amounts to meanwhile.
void TablesPanel::refresh() {
    if (document().inGesture()) {
        return;
    }
    judge();
    const auto& layout = document().layout();
    tables_[conductors]->show(ownersIn(layout.conductors));
    tables_[blocks]->show(ownersIn(layout.blocks));
    tables_[entries]->show(ownersIn(layout.entries));
    tables_[circuits]->show(ownersIn(layout.circuits));
    tables_[systems]->show(ownersIn(layout.systems));
    followSelection();
}

// ---- selection ------------------------------------------------------------------------------

void TablesPanel::followSelection() {
    if (telling_ || !isVisible()) {
        return;
    }
    const auto owners = editing::ownersOf(selection().items());
    for (const auto kind : {conductors, blocks, entries, circuits}) {
        tables_.at(kind)->select(owners);
    }
}

void TablesPanel::tellSelection(const FieldTable& table) {
    std::vector<Item> items;
    for (const auto& owner : table.selectedOwners()) {
        if (const auto item = itemOf(owner)) {
            items.push_back(*item);
        }
    }
    telling_ = true;
    selection().set(std::move(items));
    telling_ = false;
    for (auto* other : tables_) {
        if (other != &table) {
            other->select({});
        }
    }
}

}  // namespace gw::ui

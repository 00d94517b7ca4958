#pragma once

#include <QWidget>
#include <optional>

#include "editing/conductors.h"
#include "layout/layout.h"

/// Short questions. Each gives its answer, or nothing when it was put away.
namespace gw::ui {

/// Stock section and length, article, location: a gutter with nothing in it.
std::optional<layout::Layout> askNewGutter(QWidget* parent);

struct RacewayAnswer {
    std::optional<standards::RacewayType> raceway;
    std::optional<standards::TradeSize> tradeSize;
};
std::optional<RacewayAnswer> askRaceway(QWidget* parent);

/// A circuit without an id: editing::addCircuit gives it one.
std::optional<layout::Circuit> askCircuit(QWidget* parent, const layout::Layout& layout);

struct ConductorsAnswer {
    layout::CircuitId circuit;
    editing::ConductorKind kind;
    std::optional<layout::EntryId> entry;  ///< asked only where conductors are fanned in
};
/// REQUIRES a circuit; an entry where one is asked for.
std::optional<ConductorsAnswer> askConductors(QWidget* parent,
                                              const layout::Layout& layout,
                                              bool withEntry);

}  // namespace gw::ui

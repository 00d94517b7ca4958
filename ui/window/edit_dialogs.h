#pragma once

#include <QWidget>
#include <optional>

#include "base/vec3.h"
#include "units/length.h"

/// Short questions about what is selected. Each gives its answer, or nothing when it was put away.
namespace gw::ui {

/// How far: right, up and toward the cover, as typed ("3 1/2", "90 mm"). what: its name.
std::optional<Vec3> askShift(QWidget* parent, units::LengthUnit unit, const QString& what);

struct RowAnswer {
    int copies = 1;
    Vec3 pitch;  ///< inches
};
/// How many copies, and how far from one to the next.
std::optional<RowAnswer> askRow(QWidget* parent,
                                units::LengthUnit unit,
                                const QString& what,
                                const Vec3& usual);

}  // namespace gw::ui

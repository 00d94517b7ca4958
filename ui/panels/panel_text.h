#pragma once

#include <QIcon>
#include <QString>
#include <string>
#include <string_view>

#include "base/result.h"
#include "checks/finding.h"
#include "document/selection.h"

/// How panels put core's values into words.
namespace gw::ui {

QString toQString(std::string_view utf8);

/// "conductor S1-A", "block A", "entry Service", "circuit Bakery".
QString itemName(const layout::Layout& layout, const Item& item);
/// What a finding is about: "conductor S1-A, block A", or "the gutter".
QString subjectsName(const layout::Layout& layout, const checks::Finding& finding);

/// "3.803 in" or "96.6 mm": as precise as verdicts are.
QString quantityText(const checks::Quantity& quantity, units::LengthUnit unit);
/// Empty where there is none.
QString quantityText(const std::optional<checks::Quantity>& quantity, units::LengthUnit unit);

/// "not a length (expected a number with or without unit, found abc)", without file and place.
QString errorText(const Error& error);

/// The sign of a verdict, for lists and buttons.
QIcon verdictIcon(checks::Verdict verdict);
/// "breach", "breaches": with their number.
QString countedVerdict(checks::Verdict verdict, int count);

}  // namespace gw::ui

#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"

/// The findings as a person reads them and as a script does.
namespace gw::checks {

/// What the report is about, beside the layout itself.
struct ReportHead {
    std::string file;              ///< path as given, may be empty
    std::vector<Check> leftOut{};  ///< checks that were not asked for: the report says so
};

/// Plain text, UTF-8, at most 100 columns: a head that can be read in ten seconds, then the
/// findings by verdict, breaches first, and within a verdict by group, each with measured, limit,
/// margin, section and working; at last the checks that did not concern the layout, and why.
std::string textReport(const geometry::BuiltLayout& built,
                       const std::vector<Finding>& findings,
                       const ReportHead& head);

/// The same as JSON. Lengths in inches.
std::string jsonReport(const geometry::BuiltLayout& built,
                       const std::vector<Finding>& findings,
                       const ReportHead& head);

/// "No breach. 41 met, 2 cautions." – the verdict of the whole in one line.
std::string summaryLine(const Tally& tally);

/// The usual cautions, one sentence each, for report, sheet and help.
const std::vector<std::string>& cautions();

}  // namespace gw::checks

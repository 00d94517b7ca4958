#pragma once

#include <map>
#include <string>

#include "base/result.h"
#include "checks/help.h"

/// The help pages of the source tree, and the table of checks that README holds.
namespace gw::test {

/// The text of a check's page.
Result<std::string> helpSource(checks::Check check);

/// Every page. Error: the first one that is not there or does not parse.
Result<std::map<checks::Check, checks::HelpPage>> shippedHelp();

/// Where README lies.
std::string readmePath();

/// What stands between README's marks "<!-- checks -->" and "<!-- /checks -->" has to be this.
std::string readmeTable(const std::map<checks::Check, checks::HelpPage>& pages);

/// The text with that table between its marks. Error `missing` where it has not both.
Result<std::string> withTable(const std::string& readme, const std::string& table);

}  // namespace gw::test

#pragma once

#include <vector>

#include "checks/finding.h"
#include "live/live_facts.h"

/// The findings of all checks, kept current while things move.
namespace gw::live {

class LiveFindings {
public:
    LiveFindings(const geometry::BuiltLayout& built, const checks::Facts& facts);

    /// Finds again what hangs on what was touched. Cost: by that.
    void update(const geometry::BuiltLayout& built,
                const checks::Facts& facts,
                const Touched& touched);

    /// All of them, as checkAll() gives them. Cost: a copy of each.
    std::vector<checks::Finding> all() const;

private:
    struct SectionFindings {
        const checks::Section* section;
        std::vector<std::vector<checks::Finding>> units;
    };

    static void findAgain(SectionFindings& kept,
                          const geometry::BuiltLayout& built,
                          const checks::Facts& facts,
                          const std::vector<std::size_t>& units);

    std::vector<SectionFindings> sections_;
};

}  // namespace gw::live

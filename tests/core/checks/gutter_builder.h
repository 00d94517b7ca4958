#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"
#include "geometry/built_layout.h"

/// Small gutters for the tests of the checks: one call a thing, everything stated unless a test
/// takes it away. Ids are the names given.
namespace gw::check_test {

/// A part of one bore straight through from top to bottom with a stop in the middle: port "1" is
/// entered from above, port "2" from below, each 1.5 in deep and 1 in wide, screw half-way, strip
/// 1.375 ± 0.0625 in, copper class B 1/0 to 600 kcmil, one conductor. Body 2 x 4 x 2 in.
parts::Part splicePart();

/// Two bores open at both mouths, along y, 3 in deep and 1 in wide, screws at 0.75 and 2.25 in.
/// Body 4 x 3 x 2 in; bores at x = 1 and 3, z = 1.
parts::Part throughPart();

/// Like splicePart with ports 1 to `count` in a row along x, all entered from above, 1.5 in apart,
/// the first at 1 in. Body 1.5 count + 0.5 wide.
parts::Part rowPart(int count);

class GutterBuilder {
public:
    /// An auxiliary gutter of steel, type 1, dry, not flooding; circuit "S" (service, phases A B C
    /// N G, one set) of system "utility", 208Y/120 V.
    explicit GutterBuilder(const Vec3& inside = {60.0, 12.0, 12.0});

    layout::Layout& layout() { return layout_; }
    const parts::Shelf& shelf() const { return shelf_; }
    parts::Part& part(const std::string& id) { return shelf_.at(parts::PartId(id)); }
    GutterBuilder& add(const parts::Part& part);

    GutterBuilder& circuit(const std::string& id,
                           const std::vector<layout::Phase>& phases,
                           int sets = 1,
                           const std::string& joins = {});
    GutterBuilder& entry(const std::string& id, layout::Wall wall, double u, double v);
    GutterBuilder& block(const std::string& id, const std::string& part, const Vec3& corner);
    /// 500 kcmil black copper THWN-2 class B of circuit "S", set 1, phase A; id and tag alike.
    layout::Conductor& conductor(const std::string& id,
                                 const layout::End& from,
                                 const layout::End& to,
                                 const std::vector<layout::Corner>& corners = {});
    layout::Conductor& conductorNamed(const std::string& id);
    layout::Block& blockNamed(const std::string& id);
    layout::Circuit& circuitNamed(const std::string& id);

    /// Validates first: a test that states nonsense stops with the sentence.
    geometry::BuiltLayout build() const;

private:
    layout::Layout layout_;
    parts::Shelf shelf_;
};

layout::End atEntry(const std::string& entry, int slot = 1);
/// Stripped 1.375 in and pushed to the stop.
layout::End inPort(const std::string& block, const std::string& port, double strip = 1.375);
layout::End spare(const Vec3& tip);
layout::Corner corner(const Vec3& at, double radius);

/// A gutter that meets everything: an entry above and one below at x = 10, a splice part between
/// them, and one straight conductor to each side: "S-A" of circuit S above, "T-A" of T below.
GutterBuilder straightSplice();

/// Findings with this verdict.
std::vector<checks::Finding> withVerdict(const std::vector<checks::Finding>& findings,
                                         checks::Verdict verdict);
/// Findings that name this subject.
std::vector<checks::Finding> about(const std::vector<checks::Finding>& findings,
                                   const checks::Subject& subject);

/// The findings as text, sorted: equal for two layouts that differ only in order.
std::vector<std::string> sortedTexts(const std::vector<checks::Finding>& findings);

}  // namespace gw::check_test

namespace gw::checks {
/// For messages of failing tests.
void PrintTo(const Finding& finding, std::ostream* out);
}  // namespace gw::checks

#pragma once

#include <string>
#include <vector>

#include "layout/layout.h"
#include "parts/part.h"

/// Small hand-made layouts for tests, with numbers chosen so that every length can be worked out
/// by hand. Change what a test is about; the rest stays valid.
namespace gw::test {

/// A layout and the shelf its parts come from. References that the adders give are good until the
/// next thing of the same kind is added.
struct Sample {
    layout::Layout layout;
    parts::Shelf shelf;

    layout::System& addSystem(const std::string& id);
    /// Feeder of system "sys" with phases A, B, C, N, one set.
    layout::Circuit& addCircuit(const std::string& id);
    /// No raceway stated.
    layout::Entry& addEntry(const std::string& id, layout::Wall wall, double u, double v);
    /// As drawn unless `attitude` says otherwise.
    layout::Block& addBlock(const std::string& id,
                            const std::string& part,
                            const Vec3& corner,
                            const std::string& attitude = "+x+y");
    /// 6 AWG copper THHN class B of circuit "feed", phase A, set 1; corners of radius 1.25 in.
    layout::Conductor& addConductor(const std::string& id,
                                    const layout::End& from,
                                    const layout::End& to,
                                    const std::vector<Vec3>& corners = {});

    layout::Entry& entry(const std::string& id);
    layout::Block& block(const std::string& id);
    layout::Circuit& circuit(const std::string& id);
    layout::Conductor& conductor(const std::string& id);
    parts::Part& part(const std::string& id);
};

layout::End atEntry(const std::string& entry, int slot = 1);
layout::End inPort(const std::string& block, const std::string& port);
layout::End spare(const Vec3& tip);

/// Row of three blind ports. Body 6 x 2 x 2 in; ports "1", "2", "3" at x = 1, 3, 5 on the lower
/// side (y = 0) at half depth (z = 1), bored 1.5 in upward, 0.75 in wide, 14 to 2/0 AWG copper or
/// aluminium, strip 1.5 ± 0.125 in; screws "s1" … on the face (z = 2) over the bores' middles
/// (y = 0.75); mounting holes at (0.5, 1.75, 0) and (5.5, 1.75, 0).
parts::Part rowPart();

/// One bore through. Body 4 x 2 x 2 in; port "run" from (0, 1, 1) along x, 4 in, open at both
/// mouths; port "tap" at (2, 0, 1) bored 0.75 in upward, blind.
parts::Part throughPart();

/// Port "e" of which either mouth can be opened: body 2 x 3 x 2 in, from (1, 0, 1) along y, 3 in.
/// Beside it the blind port "f" from (0, 0.5, 1) along x, 0.5 in.
parts::Part eitherPart();

/// Gutter 48 x 8 x 8 in, auxiliary, steel; system "sys", circuit "feed"; the three parts above on
/// the shelf as "row", "through", "either". Nothing in the gutter.
Sample emptyGutter();

/// emptyGutter() with entry "in" (top, u 12, v 2), block "A" ("row", corner 30, 4, 1, as drawn:
/// mouth of port "1" at 31, 4, 2, bored upward) and conductor "c1" from slot 1 of "in" down to
/// (12, 2, 2), along to (31, 2, 2) and up into port "1" of "A".
Sample oneTap();

}  // namespace gw::test

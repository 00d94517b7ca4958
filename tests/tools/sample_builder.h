#pragma once

#include <string>
#include <vector>

#include "layout/layout.h"
#include "tools/lane_planner.h"

/// Puts a sample layout together step by step. Anything that does not fit stops the maker with a
/// sentence: samples are made by us, so that is a bug of the maker, not an input error.
namespace gw::tools {

struct ConductorKind {
    std::string size;
    standards::Metal metal = standards::Metal::copper;
    standards::Insulation insulation = standards::Insulation::thwn2;
    standards::Stranding stranding = standards::Stranding::classB;
};

class SampleBuilder {
public:
    SampleBuilder(const parts::Shelf& shelf, std::string title, const Vec3& inside);

    layout::Layout& layout() { return layout_; }
    /// A metal wireway, marked for conductors up to this size.
    void asWireway(const std::string& largest);

    void addSystem(const std::string& id,
                   const std::string& name,
                   int voltsBetween,
                   int voltsToGround,
                   double faultKiloamperes);
    void addCircuit(layout::Circuit circuit) { layout_.circuits.push_back(std::move(circuit)); }
    void addEntry(layout::Entry entry) { layout_.entries.push_back(std::move(entry)); }
    /// `corner`: least x, y, z of the turned body.
    void addBlock(const std::string& id,
                  const std::string& part,
                  const Vec3& corner,
                  const std::string& attitude,
                  layout::Phase phase);
    /// Extents of a part's body as turned.
    Vec3 extents(const std::string& part, const std::string& attitude) const;

    layout::End atEntry(const std::string& entry, int slot) const;
    /// In a port, stripped as the part states; into one open at both mouths as far as it is
    /// stripped.
    layout::End inPort(const std::string& block, const std::string& port) const;

    /// Returns its index. Id and tag are the same text; the colour is the customary one of the
    /// first system. REQUIRES a system.
    std::size_t addConductor(const std::string& tag,
                             const std::string& circuit,
                             int set,
                             layout::Phase phase,
                             const ConductorKind& kind,
                             layout::End from,
                             layout::End to);

    struct Offset {
        double out;  ///< inches from the wall to the first corner
        double run;  ///< inches along the gutter from there to the lane
    };
    /// Lays a conductor from one end wall to the other, uncut and straight through a port, with an
    /// offset at each end and its window as long as the bore less 1/16 in.
    void passThrough(std::size_t conductor,
                     const std::string& block,
                     const std::string& port,
                     const Offset& offset);

    /// Lays a conductor with one bend, where the axes of its two ends cross.
    void elbow(std::size_t conductor);

    /// Lays the conductors in this order, or none of them.
    bool tryLay(const std::vector<std::size_t>& order, const LaneWishes& wishes);

    /// Gives a conductor another slot of an entry it comes through.
    void seat(std::size_t conductor, const std::string& entry, int slot);

    /// Remembers what is laid, and goes back to it.
    void mark() { marked_ = laid_; }
    void unlay() { laid_ = marked_; }
    [[noreturn]] void giveUp(std::size_t conductor) const;

private:
    const parts::Part& partOf(const std::string& block) const;
    const parts::Shelf& shelf_;
    layout::Layout layout_;
    std::vector<std::size_t> laid_;
    std::vector<std::size_t> marked_;
};

}  // namespace gw::tools

#pragma once

#include <string>

#include "layout/layout.h"

/// Small gutters for routing, put together thing by thing. An invented yard's.
namespace gw::test_support {

class SmallGutter {
public:
    explicit SmallGutter(const Vec3& inside);

    void addEntry(const std::string& id, layout::Wall wall, double u, double v);
    /// As drawn: length along x, ports of one side open downward.
    void addBlock(const std::string& id, const std::string& part, const Vec3& corner);
    void addConductor(const std::string& id, const layout::End& from, const layout::End& to);
    static layout::End atEntry(const std::string& entry, int slot = 1);
    static layout::End inPort(const std::string& block, const std::string& port);

    layout::Layout layout;
    std::string size = "3/0";  ///< of conductors that are added
};

}  // namespace gw::test_support

#include "parts/part.h"

namespace gw::parts {

Vec3 boreEnd(const Port& port) {
    return port.mouth + port.direction * port.boreDepth.in();
}

}  // namespace gw::parts

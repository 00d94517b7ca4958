#pragma once

#include "drawing/subject.h"

namespace gw::drawing {

/// The key: how the phases in use and bare copper are drawn, and finding marks where there are any.
Rect keySize(const Subject& subject);
void drawKey(Sketch& sketch, const Subject& subject, Point corner);

}  // namespace gw::drawing

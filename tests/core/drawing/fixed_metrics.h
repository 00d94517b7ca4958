#pragma once

#include <algorithm>

#include "drawing/drawing.h"

namespace gw::test {

/// Every character half as wide as the text is high, so that widths can be worked out by hand.
class FixedMetrics : public drawing::TextMetrics {
public:
    double width(std::string_view text, double height, drawing::Face) const override {
        const auto characters = std::count_if(text.begin(), text.end(), [](char byte) {
            return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;  // not inside a character
        });
        return 0.5 * height * static_cast<double>(characters);
    }
};

}  // namespace gw::test

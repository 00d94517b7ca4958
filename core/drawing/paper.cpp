#include <array>
#include <cctype>

#include "base/contract.h"
#include "drawing/sheet.h"

namespace gw::drawing {
namespace {

struct PaperRow {
    Paper paper;
    std::string_view text;
    double width;  ///< mm, landscape
    double height;
};

// Letter 8.5 x 11 in, Legal 8.5 x 14 in, Tabloid 11 x 17 in (ANSI/ASME Y14.1); ARCH C 18 x 24 in,
// ARCH D 24 x 36 in (common practice); A series ISO 216.
constexpr std::array<PaperRow, 9> kPapers = {{
    {Paper::letter, "Letter", 279.4, 215.9},
    {Paper::legal, "Legal", 355.6, 215.9},
    {Paper::tabloid, "Tabloid", 431.8, 279.4},
    {Paper::archC, "ARCH C", 609.6, 457.2},
    {Paper::archD, "ARCH D", 914.4, 609.6},
    {Paper::a4, "A4", 297.0, 210.0},
    {Paper::a3, "A3", 420.0, 297.0},
    {Paper::a2, "A2", 594.0, 420.0},
    {Paper::a1, "A1", 841.0, 594.0},
}};

const PaperRow& rowOf(Paper paper) {
    const auto index = static_cast<std::size_t>(paper);
    CONTRACT(index < kPapers.size() && kPapers[index].paper == paper);
    return kPapers[index];
}

std::string folded(std::string_view text) {
    std::string letters;
    for (const char c : text) {
        if (c != ' ' && c != '-') {
            letters += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        }
    }
    return letters;
}

}  // namespace

std::string_view paperText(Paper paper) {
    return rowOf(paper).text;
}

std::optional<Paper> paperFromText(std::string_view text) {
    for (const auto& row : kPapers) {
        if (folded(row.text) == folded(text)) {
            return row.paper;
        }
    }
    return std::nullopt;
}

Rect paperSize(Paper paper) {
    const auto& row = rowOf(paper);
    return {0.0, 0.0, row.width, row.height};
}

}  // namespace gw::drawing

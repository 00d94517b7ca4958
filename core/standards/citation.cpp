#include "standards/citation.h"

#include <array>

namespace gw::standards {
namespace {

struct NamedEdition {
    Edition edition;
    std::string_view text;
};
constexpr std::array<NamedEdition, 4> kEditions = {{{Edition::nec2017, "2017"},
                                                    {Edition::nec2020, "2020"},
                                                    {Edition::nec2023, "2023"},
                                                    {Edition::nec2026, "2026"}}};

}  // namespace

std::string_view editionText(Edition edition) {
    for (const auto& named : kEditions) {
        if (named.edition == edition) {
            return named.text;
        }
    }
    return {};
}

std::optional<Edition> editionFromText(std::string_view text) {
    for (const auto& named : kEditions) {
        if (named.text == text) {
            return named.edition;
        }
    }
    return std::nullopt;
}

std::string_view basisText(Basis basis) {
    switch (basis) {
        case Basis::seenTwice:
            return "seen in two places";
        case Basis::seen:
            return "seen in one place";
        case Basis::memory:
            return "from memory";
        case Basis::commonPractice:
            return "common practice, no source";
        case Basis::partData:
            return "stated by the part";
        case Basis::layoutData:
            return "stated by the layout";
        case Basis::geometry:
            return "geometry";
    }
    return {};
}

std::string toText(const Citation& citation) {
    std::string text = citation.standard;
    if (!citation.section.empty()) {
        text += (text.empty() ? "" : " ") + citation.section;
    }
    if (citation.basis == Basis::memory || citation.basis == Basis::commonPractice) {
        text += (text.empty() ? "" : ", ") + std::string(basisText(citation.basis));
    }
    return citation.note.empty() ? text : text + " (" + citation.note + ")";
}

Citation necCitation(Edition edition, std::string section, Basis basis, std::string note) {
    return {
        "NFPA 70-" + std::string(editionText(edition)), std::move(section), basis, std::move(note)};
}

}  // namespace gw::standards

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

/// Where a number comes from, carried beside the number wherever it goes.
namespace gw::standards {

/// Edition of NFPA 70, the National Electrical Code. 2026 only where a section was read; what was
/// inferred says so in the citation's note.
enum class Edition { nec2017, nec2020, nec2023, nec2026 };

std::string_view editionText(Edition edition);             ///< "2023"
std::optional<Edition> editionFromText(std::string_view);  ///< accepts exactly the four years

/// How well a value is known.
enum class Basis {
    seenTwice,       ///< two independent public places agree
    seen,            ///< one public place
    memory,          ///< from memory, never verified: say so wherever it is shown
    commonPractice,  ///< a fact of the trade, no published source
    partData,        ///< stated by the part file
    layoutData,      ///< stated by the layout, e.g. a local amendment
    geometry,        ///< follows from the shapes alone
};

std::string_view basisText(Basis basis);  ///< "seen in two places", "from memory", …

struct Citation {
    std::string standard;  ///< "NFPA 70-2023", "ICEA S-95-658", "common practice"
    std::string section;   ///< "376.22(A)", "Table 312.6(A)", or empty
    Basis basis = Basis::memory;
    std::string note = {};  ///< what to know about it, or empty

    friend bool operator==(const Citation&, const Citation&) = default;
};

/// "NFPA 70-2023 376.22(A)"; then ", from memory" or ", common practice, no source" where that is
/// so; then the note in parentheses: "(2026 number inferred)".
std::string toText(const Citation& citation);

/// A section or table of NFPA 70 in that edition.
Citation necCitation(Edition edition, std::string section, Basis basis, std::string note = {});

template <class T>
struct Cited {
    T value;
    Citation source;
};

/// Why a table has no value for what was asked, in one sentence, and the table that was asked.
struct NoValue {
    std::string why;
    Citation asked;
};

/// What a table says: a value with its citation, or that there is none.
template <class T>
using Lookup = tl::expected<Cited<T>, NoValue>;

}  // namespace gw::standards

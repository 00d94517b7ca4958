#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>

/// How a function says that its input could not be used. Bugs do not come here: see contract.h.
namespace gw {

enum class ErrorCode {
    syntax,       ///< the text is not what the format allows
    missing,      ///< something required is not there
    outOfRange,   ///< a number beyond what makes sense
    unknown,      ///< a name, id, member or version we do not know
    duplicate,    ///< two things claim one id or one place
    dangling,     ///< a reference to something that is not there
    contradicts,  ///< two statements that cannot both be true
    unreadable,   ///< the file could not be opened or read
    unwritable,   ///< the file could not be written
};

/// One problem with an input, complete enough to be one clear line.
struct Error {
    ErrorCode code = ErrorCode::syntax;
    std::string sentence;       ///< what is wrong, without a full stop
    std::string file = {};      ///< path as given, or empty
    std::string place = {};     ///< JSON pointer, "line 3, column 7", or empty
    std::string expected = {};  ///< what would have been accepted, or empty
    std::string found = {};     ///< what stood there, or empty
};

template <class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(Error error) {
    return tl::unexpected<Error>(std::move(error));
}

/// "FILE: PLACE: sentence (expected …, found …)" on one line; parts not known are left out.
/// Control characters are written as \xNN, so the result is always one printable line.
std::string toLine(const Error& error);

}  // namespace gw

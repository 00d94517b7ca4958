#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json_reader.h"
#include "base/json_writer.h"
#include "base/result.h"
#include "parts/part.h"

/// The part file: {"format": "gutterwright-parts", "version": 1, "unit": "in", "parts": […]}, with
/// the members of parts::Part by their names. `unit` may be "mm"; then every length in it is.
namespace gw::parts {

inline constexpr int kPartsVersion = 1;

/// The parts of one file, in its order. Errors name the file, the JSON pointer, what was expected
/// and what was found. Beyond types and ranges they cover: names used once; mouths on the body's
/// surface, bores wholly inside it; screws that name a port and whose heads lie on the face they
/// look out of; mounting holes on the mounting face; ranges the right way round.
Result<std::vector<Part>> readParts(std::string_view bytes, const std::string& fileName);

/// One part of a document being read; problems are recorded there. perInch: how many of the file's
/// units make an inch (1 or 25.4).
Part readPart(const JsonValue& value, double perInch);

JsonTree writePart(const Part& part);
std::string writeParts(const std::vector<Part>& parts);

/// "in" -> 1, "mm" -> 25.4; records a problem for anything else.
double readUnit(const JsonValue& value);

/// A conductor size as printed in the tables ("1/0", "500"); the other spellings are for people who
/// type.
units::WireSize readSize(const JsonValue& value);

/// {"x":…, "y":…, "z":…}, coordinates within ±`bound` inches.
Vec3 readPoint(const JsonValue& value, double perInch, double bound);
JsonTree writePoint(const Vec3& point);

}  // namespace gw::parts

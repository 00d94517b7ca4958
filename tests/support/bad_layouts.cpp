#include "support/bad_layouts.h"

#include <filesystem>
#include <stdexcept>

#include "base/read_file.h"

namespace gw::test {
namespace {

using namespace std::string_literals;
using enum ErrorCode;

using Spoil = std::function<std::string(const std::string&)>;

std::size_t onlyPlaceOf(const std::string& text, const std::string& part) {
    const auto at = text.find(part);
    if (at == std::string::npos || text.find(part, at + 1) != std::string::npos) {
        throw std::logic_error("not there once: " + part);
    }
    return at;
}

/// The file with one text in it, which stands there once, for another.
Spoil swap(std::string old, std::string other) {
    return [old = std::move(old), other = std::move(other)](std::string good) {
        return good.replace(onlyPlaceOf(good, old), old.size(), other);
    };
}

Spoil cutAfter(std::string text) {
    return [text = std::move(text)](const std::string& good) {
        return good.substr(0, onlyPlaceOf(good, text) + text.size());
    };
}

Spoil append(std::string bytes) {
    return [bytes = std::move(bytes)](const std::string& good) { return good + bytes; };
}

Spoil whole(std::string bytes) {
    return [bytes = std::move(bytes)](const std::string&) { return bytes; };
}

/// The good file has ASCII only, so every character becomes its byte and a byte 0.
Spoil utf16(std::string mark, bool littleEndian) {
    return [mark = std::move(mark), littleEndian](const std::string& good) {
        std::string bytes = mark;
        for (const char c : good) {
            bytes += littleEndian ? std::string{c, '\0'} : std::string{'\0', c};
        }
        return bytes;
    };
}

std::string times(int count, const std::string& text) {
    std::string all;
    for (int i = 0; i < count; ++i) {
        all += text;
    }
    return all;
}

}  // namespace

// clang-format off
const std::vector<BadLayout>& badLayouts() {
    static const std::vector<BadLayout> kRows = {
    {"Empty", whole(""),
     syntax, "", "expected a JSON object, found nothing"},
    {"OnlyByteOrderMark", whole("\xEF\xBB\xBF"),
     syntax, "", "expected a JSON object, found nothing"},
    {"OnlyBlanks", whole("  \n\t\n  \n"),
     syntax, "", "expected a JSON object, found nothing"},
    {"CutBetweenMembers", cutAfter("\"horizontal\"\n  },\n  "),
     syntax, "line 15, column 3", "expected string literal, found the end of the text"},
    {"CutInAText", cutAfter("\"name\": \"208"),
     syntax, "line 18, column 30", "expected JSON in UTF-8, found the end of the text"},
    {"CutInANumber", cutAfter("\"sheet\": 0."),
     syntax, "line 11, column 16", "expected digit after '.', found the end of the text"},
    {"LastBraceMissing", cutAfter("  ]\n"),
     syntax, "line 57, column 1", "expected '}', found the end of the text"},
    {"SecondDocument", append("{}\n"),
     syntax, "line 58, column 1", "expected end of input, found {"},
    {"Utf16LittleEndian", utf16("\xFF\xFE", true),
     syntax, "", "expected UTF-8, found UTF-16"},
    {"Utf16BigEndian", utf16("\xFE\xFF", false),
     syntax, "", "expected UTF-8, found UTF-16"},
    {"Utf16WithoutMark", utf16("", true),
     syntax, "line 1, column 2", "expected JSON in UTF-8, found a byte 0"},
    {"Latin1", swap("Small", "Caf\xE9"),
     syntax, "line 5, column 17", "expected JSON in UTF-8, found bytes that are not UTF-8"},
    {"Utf8Overlong", swap("Small", "\xC0\xAF"),
     syntax, "line 5, column 13", "expected JSON in UTF-8, found bytes that are not UTF-8"},
    {"Utf8Surrogate", swap("Small", "\xED\xA0\x80"),
     syntax, "line 5, column 14", "expected JSON in UTF-8, found bytes that are not UTF-8"},
    {"NulBetweenMembers", swap("\"Small\",\n", "\"Small\",\n\0"s),
     syntax, "line 6, column 1", "expected JSON in UTF-8, found a byte 0"},
    {"NulInAText", swap("Small", "Sm\0ll"s),
     syntax, "line 5, column 15", "expected JSON in UTF-8, found a byte 0"},
    {"LineBreakInAText", swap("Small", "Sm\nll"),
     syntax, "line 5, column 15", R"(expected JSON in UTF-8, found \x0A)"},
    {"Picture", whole("\x89PNG\r\n\x1A\n\0\0\0\rIHDR"s),
     syntax, "line 3, column 1", "expected JSON in UTF-8, found a byte 0"},
    {"ControlCharacterEscaped", swap(R"("Small")", R"("Sm\u0007ll")"),
     syntax, "/title", R"(expected printable characters, found "Sm\x07ll")"},
    {"NulEscaped", swap(R"("Small")", R"("Sm\u0000ll")"),
     syntax, "/title", R"(expected printable characters, found "Sm\x00ll")"},
    {"EscapeOfHalfAPair", swap(R"("Small")", R"("\ud800")"),
     syntax, "line 5, column 19", R"(expected JSON in UTF-8, found ")"},
    {"Nan", swap(R"("u": 10)", R"("u": NaN)"),
     syntax, "line 25, column 38", "expected JSON in UTF-8, found N"},
    {"Infinity", swap(R"("u": 10)", R"("u": Infinity)"),
     syntax, "line 25, column 38", "expected JSON in UTF-8, found I"},
    {"MinusInfinity", swap(R"("u": 10)", R"("u": -Infinity)"),
     syntax, "line 25, column 39", "expected digit after '-', found I"},
    {"NumberBeyondDouble", swap(R"("u": 10)", R"("u": 1e999)"),
     outOfRange, "line 25, column 38", "expected a finite number, found 1e999"},
    {"NumberAtTheEndOfDouble", swap(R"("u": 10)", R"("u": 1e308)"),
     outOfRange, "/entries/0/u", "expected 0 to 48 in, found more than 1e15 in"},
    {"NumberOfManyDigits", swap(R"("u": 10)", R"("u": )" + std::string(300, '9')),
     outOfRange, "/entries/0/u", "expected 0 to 48 in, found more than 1e15 in"},
    {"NumberInHexadecimal", swap(R"("u": 10)", R"("u": 0x10)"),
     syntax, "line 25, column 39", "expected '}', found x"},
    {"NumberWithLeadingZero", swap(R"("u": 10)", R"("u": 010)"),
     syntax, "line 25, column 39", "expected '}', found 10"},
    {"NumberWithDecimalComma", swap(R"("u": 10,)", R"("u": 10,5,)"),
     syntax, "line 25, column 41", "expected string literal, found 5"},
    {"NumberAsText", swap(R"("u": 10)", R"("u": "10")"),
     syntax, "/entries/0/u", R"(expected a number, found "10")"},
    {"NumberAsFraction", swap(R"("u": 10)", R"("u": 10 1/2)"),
     syntax, "line 25, column 41", "expected '}', found 1"},
    {"CommaTooMany", swap(R"("phase": "A"}
  ])", R"("phase": "A"},
  ])"),
     syntax, "line 30, column 3", "expected '[', '{', or a literal, found ]"},
    {"Comment", swap(R"("title")", "// working copy\n  \"title\""),
     syntax, "line 5, column 3", "expected string literal, found /"},
    {"SingleQuotes", swap(R"("Small")", "'Small'"),
     syntax, "line 5, column 12", "expected JSON in UTF-8, found '"},
    {"NameWithoutQuotes", swap(R"("title")", "title"),
     syntax, "line 5, column 4", "expected string literal, found i"},
    {"MemberTwice", swap(R"("Small",)", R"("Small", "title": "Large",)"),
     duplicate, "/title", R"(expected each member once, found "title" again)"},
    {"RootIsAList", whole("[]"),
     syntax, "/", "expected an object, found an array"},
    {"RootIsAText", whole("\"gutter\""),
     syntax, "/", R"(expected an object, found "gutter")"},
    {"RootIsNull", whole("null"),
     syntax, "/", "expected an object, found null"},
    {"FormatMissing", swap("  \"format\": \"gutterwright-layout\",\n", ""),
     missing, "/", R"(expected "format", found nothing)"},
    {"FormatOfAPartFile", swap(R"("gutterwright-layout")", R"("gutterwright-parts")"),
     unknown, "/format", R"(expected "gutterwright-layout", found "gutterwright-parts")"},
    {"VersionMissing", swap("  \"version\": 1,\n", ""),
     missing, "/", R"(expected "version", found nothing)"},
    {"VersionNewer", swap(R"("version": 1)", R"("version": 2)"),
     unknown, "/version", "expected version 1, found version 2"},
    {"VersionZero", swap(R"("version": 1)", R"("version": 0)"),
     outOfRange, "/version", "expected 1 to 1000000, found 0"},
    {"VersionAsText", swap(R"("version": 1)", R"("version": "1")"),
     syntax, "/version", R"(expected a number, found "1")"},
    {"VersionWithPoint", swap(R"("version": 1)", R"("version": 1.5)"),
     syntax, "/version", "expected a whole number, found 1.5"},
    {"UnitMissing", swap("  \"unit\": \"in\",\n", ""),
     missing, "/", R"(expected "unit", found nothing)"},
    {"UnitUnknown", swap(R"("unit": "in")", R"("unit": "cm")"),
     unknown, "/unit", R"(expected in or mm, found "cm")"},
    {"EditionMissing", swap("  \"edition\": \"2023\",\n", ""),
     missing, "/", R"(expected "edition", found nothing)"},
    {"EditionUnknown", swap(R"("2023")", R"("2014")"),
     unknown, "/edition", R"(expected 2017, 2020, 2023 or 2026, found "2014")"},
    {"EditionAsNumber", swap(R"("2023")", "2023"),
     syntax, "/edition", "expected a text, found 2023"},
    {"DisplayUnitUnknown", swap(R"("displayUnit": "in")", R"("displayUnit": "ft")"),
     unknown, "/displayUnit", R"(expected in or mm, found "ft")"},
    {"TitleTooLong", swap("Small", std::string(420, 'S')),
     outOfRange, "/title", "expected at most 400 bytes, found 420 bytes"},
    {"UnknownMember", swap(R"("title": "Small")", R"("shape": "round", "title": "Small")"),
     unknown, "/shape", R"(found "shape")"},
    {"UnknownMemberMisspelt", swap(R"("entries")", R"("entrys")"),
     unknown, "/entrys", R"(found "entrys")"},
    {"UnknownMemberOfGutter", swap(R"("sheet")", R"("gauge")"),
     unknown, "/gutter/gauge", R"(expected article, inside, sheet, material, enclosureType, orientation, supportSpacing, beyondEquipment, largestConductor, found "gauge")"},
    {"UnknownMemberOfPoint", swap(R"("z": 0)", R"("z": 0, "w": 1)"),
     unknown, "/blocks/0/corner/w", R"(expected x, y, z, found "w")"},
    {"UnknownMemberOfConductor", swap(R"("C1", "tag")", R"("C1", "label")"),
     unknown, "/conductors/0/label", R"(found "label")"},
    {"UnknownMemberOfEnd", swap(R"("E1", "slot": 1)", R"("E1", "slot": 1, "lane": 2)"),
     unknown, "/conductors/0/from/lane", R"(expected entry, slot, found "lane")"},
    {"UnknownMemberOfCorner", swap(R"("radius": 3)", R"("radius": 3, "angle": 90)"),
     unknown, "/conductors/0/corners/0/angle", R"(expected at, radius, found "angle")"},
    {"UnknownMemberOfPart", swap(R"(through", "body")", R"(through", "catalogue": "7", "body")"),
     unknown, "/parts/0/catalogue", R"(found "catalogue")"},
    {"UnknownMemberWithASlash", swap(R"("title": "Small")", R"("a/b~c": 1, "title": "Small")"),
     unknown, "/a~1b~0c", R"(found "a/b~c")"},
    {"GutterMissing", swap(R"("gutter")", R"("trough")"),
     missing, "/", R"(expected "gutter", found nothing)"},
    {"GutterIsNull", swap(R"("gutter": {)", R"("gutter": null, "unused": {)"),
     syntax, "/gutter", "expected an object, found null"},
    {"GutterLengthZero", swap(R"("length": 48)", R"("length": 0)"),
     outOfRange, "/gutter/inside/length", "expected 1 to 1200 in, found 0 in"},
    {"GutterHeightNegative", swap(R"("height": 8)", R"("height": -8)"),
     outOfRange, "/gutter/inside/height", "expected 1 to 1200 in, found -8 in"},
    {"GutterLongerThanAStreet", swap(R"("length": 48)", R"("length": 48000)"),
     outOfRange, "/gutter/inside/length", "expected 1 to 1200 in, found 48000 in"},
    {"GutterDepthMissing", swap(R"(, "depth": 6)", ""),
     missing, "/gutter/inside", R"(expected "depth", found nothing)"},
    {"GutterInsideIsAList", swap(R"({"length": 48, "height": 8, "depth": 6})", "[48, 8, 6]"),
     syntax, "/gutter/inside", "expected an object, found an array"},
    {"GutterSheetZero", swap(R"("sheet": 0.0625)", R"("sheet": 0)"),
     outOfRange, "/gutter/sheet", "expected 0.001 to 1 in, found 0 in"},
    {"GutterMaterialUnknown", swap(R"("steel")", R"("brass")"),
     unknown, "/gutter/material", R"(expected steel, stainless steel, aluminium or nonmetallic, found "brass")"},
    {"GutterArticleUnknown", swap(R"("auxiliary gutter")", R"("trough")"),
     unknown, "/gutter/article", R"(expected auxiliary gutter, metal wireway or nonmetallic wireway, found "trough")"},
    {"GutterOrientationMissing", swap(R"(,
    "orientation": "horizontal")", ""),
     missing, "/gutter", R"(expected "orientation", found nothing)"},
    {"LocationUnknown", swap(R"("location": "dry")", R"("location": "moist")"),
     unknown, "/surroundings/location", R"(expected dry, damp, wet or buried, found "moist")"},
    {"AmbientBeyondAir", swap(R"("ambientCelsius": 30)", R"("ambientCelsius": 3000)"),
     outOfRange, "/surroundings/ambientCelsius", "expected -60 to 100 degrees C, found 3000 degrees C"},
    {"FloodsAsText", swap(R"("floods": false)", R"("floods": "no")"),
     syntax, "/surroundings/floods", R"(expected true or false, found "no")"},
    {"ReadingUnknown", swap(R"("insideWeatherproof": "wet")", R"("insideWeatherproof": "damp")"),
     unknown, "/readings/insideWeatherproof", R"(expected wet or not wet, found "damp")"},
    {"SystemIdWithABlank", swap(R"({"id": "Y1")", R"({"id": "Y 1")"),
     syntax, "/systems/0/id", R"(expected 1 to 40 letters, digits, '-', '_' or '.', first a letter or digit, found "Y 1")"},
    {"SystemIdEmpty", swap(R"({"id": "Y1")", R"({"id": "")"),
     syntax, "/systems/0/id", R"(expected 1 to 40 letters, digits, '-', '_' or '.', first a letter or digit, found "")"},
    {"SystemIdTooLong", swap(R"({"id": "Y1")", R"({"id": ")" + std::string(41, 'Y') + "\""),
     syntax, "/systems/0/id", R"(found "YYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYYY…)"},
    {"SystemVoltsWithPoint", swap(R"("voltsBetweenPhases": 208)", R"("voltsBetweenPhases": 208.5)"),
     syntax, "/systems/0/voltsBetweenPhases", "expected a whole number, found 208.5"},
    {"SystemVoltsHuge", swap(R"("voltsToGround": 120)", R"("voltsToGround": 1e20)"),
     outOfRange, "/systems/0/voltsToGround", "expected -1000000000 to 1000000000, found 1e+20"},
    {"SystemGroundAbovePhases", swap(R"("voltsToGround": 120)", R"("voltsToGround": 240)"),
     contradicts, "/systems/0/voltsToGround", "expected at most 208 V, found 240 V"},
    {"SystemsIsAnObject", swap(R"("systems": [)", R"("systems": {}, "unused": [)"),
     syntax, "/systems", "expected an array, found an object"},
    {"CircuitIdTaken", swap(R"("circuits": [)", R"("circuits": [{"id": "SV", "role": "feeder", "system": "Y1", "sets": 1, "phases": ["A"]},)"),
     duplicate, "/circuits/1/id", R"(expected an id that nothing else in the layout has, found "SV")"},
    {"CircuitSystemNotThere", swap(R"("role": "tap", "system": "Y1")", R"("role": "tap", "system": "Y2")"),
     dangling, "/circuits/1/system", R"(expected the id of one that is there, found "Y2")"},
    {"CircuitRoleUnknown", swap(R"("role": "tap")", R"("role": "stub")"),
     unknown, "/circuits/1/role", R"(expected service, feeder, tap, branch or bonding, found "stub")"},
    {"CircuitSetsZero", swap(R"("sets": 1)", R"("sets": 0)"),
     outOfRange, "/circuits/1/sets", "expected 1 to 20, found 0"},
    {"CircuitSetsTooMany", swap(R"("sets": 2)", R"("sets": 21)"),
     outOfRange, "/circuits/0/sets", "expected 1 to 20, found 21"},
    {"CircuitPhasesEmpty", swap(R"("phases": ["A"])", R"("phases": [])"),
     missing, "/circuits/1/phases", "expected at least one phase, found none"},
    {"CircuitPhasesMissing", swap(R"("phases": ["A"], "joins")", R"("joins")"),
     missing, "/circuits/1", R"(expected "phases", found nothing)"},
    {"CircuitPhaseTwice", swap(R"(["A", "B"])", R"(["A", "A"])"),
     duplicate, "/circuits/0/phases/1", R"(expected each phase once, found "A")"},
    {"CircuitPhaseUnknown", swap(R"(["A", "B"])", R"(["A", "D"])"),
     unknown, "/circuits/0/phases/1", R"(expected A, B, C, N or G, found "D")"},
    {"CircuitJoinsNothing", swap(R"("joins": "SV")", R"("joins": "SW")"),
     dangling, "/circuits/1/joins", R"(expected the id of one that is there, found "SW")"},
    {"CircuitJoinsItself", swap(R"("joins": "SV")", R"("joins": "TP")"),
     contradicts, "/circuits/1/joins", R"(expected circuits that lead back to a source, found "TP")"},
    {"CircuitsJoinInARing", swap(R"("deviceAmperes": 400)", R"("joins": "TP")"),
     contradicts, "/circuits/0/joins", R"(expected circuits that lead back to a source, found "SV")"},
    {"CircuitDeviceNegative", swap(R"("deviceAmperes": 400)", R"("deviceAmperes": -400)"),
     outOfRange, "/circuits/0/deviceAmperes", "expected 0 to 100000 A, found -400 A"},
    {"CircuitTapRuleUnknown", swap(R"("10 ft")", R"("11 ft")"),
     unknown, "/circuits/1/tapRule", R"(expected none, 10 ft, 25 ft, high bay, outside or service conductors, found "11 ft")"},
    {"EntryInTheCover", swap(R"("right")", R"("cover")"),
     unknown, "/entries/1/wall", R"(expected left, right, top, bottom or back, found "cover")"},
    {"EntryBeyondItsWall", swap(R"("u": 10)", R"("u": 48.5)"),
     outOfRange, "/entries/0/u", "expected 0 to 48 in, found 48.5 in"},
    {"EntryBehindTheWall", swap(R"("u": 4, "v": 3)", R"("u": 4, "v": -3)"),
     outOfRange, "/entries/1/v", "expected 0 to 6 in, found -3 in"},
    {"EntryRacewayUnknown", swap(R"("EMT")", R"("hose")"),
     unknown, "/entries/0/raceway", R"(expected EMT, RMC, PVC-40 or FMC, found "hose")"},
    {"EntryTradeSizeUnknown", swap(R"("tradeSize": "3")", R"("tradeSize": "7")"),
     unknown, "/entries/0/tradeSize", R"(expected 1/2, 3/4, 1, 1-1/4 … 6, found "7")"},
    {"EntryRacewayLengthNegative", swap(R"("racewayLength": 120)", R"("racewayLength": -1)"),
     outOfRange, "/entries/0/racewayLength", "expected 0 to 120000 in, found -1 in"},
    {"EntryBushingAsNumber", swap(R"("insulatingBushing": true)", R"("insulatingBushing": 1)"),
     syntax, "/entries/0/insulatingBushing", "expected true or false, found 1"},
    {"EntryIdTaken", swap(R"("entries": [)", R"("entries": [{"id": "E1", "wall": "left", "u": 4, "v": 3},)"),
     duplicate, "/entries/1/id", R"(expected an id that nothing else in the layout has, found "E1")"},
    {"RemarkIdTaken", swap(R"("R1")", R"("C1")"),
     duplicate, "/remarks/0/id", R"(expected an id that nothing else in the layout has, found "C1")"},
    {"EntryIsNull", swap(R"({"id": "E2", "wall": "right", "u": 4, "v": 3})", "null"),
     syntax, "/entries/1", "expected an object, found null"},
    {"BlockPartNotThere", swap(R"("part": "P1")", R"("part": "P2")"),
     dangling, "/blocks/0/part", R"(expected the id of one that is there, found "P2")"},
    {"BlockCornerFarAway", swap(R"("corner": {"x": 20)", R"("corner": {"x": -5000)"),
     outOfRange, "/blocks/0/corner/x", "expected -1200 to 1200 in, found -5000 in"},
    {"BlockCornerWithoutZ", swap(R"("y": 3, "z": 0)", R"("y": 3)"),
     missing, "/blocks/0/corner", R"(expected "z", found nothing)"},
    {"BlockAttitudeOfOneAxis", swap(R"("+x+y")", R"("+x-x")"),
     unknown, "/blocks/0/attitude", R"(expected length and height direction, such as +x+y, found "+x-x")"},
    {"BlockMountedNull", swap(R"("mounted": true)", R"("mounted": null)"),
     syntax, "/blocks/0/mounted", "expected true or false, found null"},
    {"BlockPhaseUnknown", swap(R"("phase": "A"}
  ])", R"("phase": "L1"}
  ])"),
     unknown, "/blocks/0/phase", R"(expected A, B, C, N or G, found "L1")"},
    {"OpenMouthOfNoPort", swap(R"({"port": "3")", R"({"port": "4")"),
     dangling, "/blocks/0/openMouths/0/port", R"(expected the id of one that is there, found "4")"},
    {"OpenMouthOfAFixedPort", swap(R"({"port": "3")", R"({"port": "2")"),
     contradicts, "/blocks/0/openMouths/0/port", R"(expected a port of which either mouth can be opened, found "2")"},
    {"OpenMouthTwice", swap(R"("near": true})", R"("near": true}, {"port": "3", "near": false})"),
     duplicate, "/blocks/0/openMouths/1/port", R"(expected each port once, found "3")"},
    {"ConductorIdOfABlock", swap(R"("C2")", R"("B1")"),
     duplicate, "/conductors/1/id", R"(expected an id that nothing else in the layout has, found "B1")"},
    {"ConductorCircuitNotThere", swap(R"("circuit": "TP")", R"("circuit": "TQ")"),
     dangling, "/conductors/2/circuit", R"(expected the id of one that is there, found "TQ")"},
    {"ConductorSetBeyondSets", swap(R"("set": 2)", R"("set": 3)"),
     outOfRange, "/conductors/1/set", "expected 1 to 2, found 3"},
    {"ConductorPhaseNotOfItsCircuit", swap(R"("set": 1, "phase": "A", "size": "6")", R"("set": 1, "phase": "B", "size": "6")"),
     contradicts, "/conductors/2/phase", R"(expected a phase of circuit "TP", found "B")"},
    {"ConductorSizeUnknown", swap(R"("size": "6")", R"("size": "7")"),
     unknown, "/conductors/2/size", R"(expected 14 to 1, 1/0 to 4/0 or 250 to 2000 as printed in the tables, found "7")"},
    {"ConductorSizeAsNumber", swap(R"("size": "6")", R"("size": 6)"),
     syntax, "/conductors/2/size", "expected a text, found 6"},
    {"ConductorSizeMissing", swap(R"( "size": "6",)", ""),
     missing, "/conductors/2", R"(expected "size", found nothing)"},
    {"ConductorMetalUnknown", swap(R"("metal": "copper")", R"("metal": "gold")"),
     unknown, "/conductors/0/metal", R"(expected copper, aluminium or copper-clad aluminium, found "gold")"},
    {"ConductorInsulationUnknown", swap(R"("THWN-2")", R"("thwn-2")"),
     unknown, "/conductors/0/insulation", R"(expected THHN, XHHW-2, … or bare, found "thwn-2")"},
    {"ConductorStrandingUnknown", swap(R"("stranding": "B")", R"("stranding": "Z")"),
     unknown, "/conductors/0/stranding", R"(expected solid, B, C, compact, G, H, I, K or M, found "Z")"},
    {"ConductorDiameterNegative", swap(R"("outsideDiameter": 0.7)", R"("outsideDiameter": -0.7)"),
     outOfRange, "/conductors/0/outsideDiameter", "expected 0.01 to 6 in, found -0.7 in"},
    {"ConductorWithoutAnEnd", swap(R"(, "to": {"entry": "E2", "slot": 1})", ""),
     missing, "/conductors/2", R"(expected "to", found nothing)"},
    {"EndSaysNothing", swap(R"("entry": "E2", "slot": 1)", ""),
     missing, "/conductors/2/to", R"(expected "entry", "block" or "spare", found an object)"},
    {"EndInTwoPlaces", swap(R"("entry": "E2", "slot": 1)", R"("entry": "E2", "slot": 1, "block": "B1")"),
     unknown, "/conductors/2/to/block", R"(expected entry, slot, found "block")"},
    {"EndAtNoEntry", swap(R"("entry": "E2")", R"("entry": "E3")"),
     dangling, "/conductors/2/to/entry", R"(expected the id of one that is there, found "E3")"},
    {"EndSlotZero", swap(R"("entry": "E2", "slot": 1)", R"("entry": "E2", "slot": 0)"),
     outOfRange, "/conductors/2/to/slot", "expected 1 to 400, found 0"},
    {"EndSlotMissing", swap(R"("entry": "E2", "slot": 1)", R"("entry": "E2")"),
     missing, "/conductors/2/to", R"(expected "slot", found nothing)"},
    {"TwoConductorsInOneSlot", swap(R"("slot": 2)", R"("slot": 1)"),
     duplicate, "/conductors/1/from/slot", "expected a slot of its own for every conductor, found 1"},
    {"EndInNoBlock", swap(R"("from": {"block": "B1")", R"("from": {"block": "B2")"),
     dangling, "/conductors/2/from/block", R"(expected the id of one that is there, found "B2")"},
    {"EndInNoPort", swap(R"("block": "B1", "port": "3")", R"("block": "B1", "port": "9")"),
     dangling, "/conductors/2/from/port", R"(expected the id of one that is there, found "9")"},
    {"EndPortNameIsNone", swap(R"("block": "B1", "port": "3")", R"("block": "B1", "port": "#3")"),
     syntax, "/conductors/2/from/port", R"(expected 1 to 40 letters, digits, '-', '_' or '.', first a letter or digit, found "#3")"},
    {"EndStripNegative", swap(R"("strip": 1.25)", R"("strip": -1.25)"),
     outOfRange, "/conductors/0/to/strip", "expected 0 to 100 in, found -1.25 in"},
    {"EndInsertedBeyondTheStop", swap(R"("inserted": 1.5)", R"("inserted": 1.75)"),
     outOfRange, "/conductors/0/to/inserted", "expected 0 to 1.5 in, found 1.75 in"},
    {"SpareWithoutY", swap(R"("x": 30, "y": 2, "z": 1)", R"("x": 30, "z": 1)"),
     missing, "/conductors/1/to/spare", R"(expected "y", found nothing)"},
    {"SpareFarAway", swap(R"("x": 30, "y": 2, "z": 1)", R"("x": 30, "y": 2000, "z": 1)"),
     outOfRange, "/conductors/1/to/spare/y", "expected -1200 to 1200 in, found 2000 in"},
    {"CornerWithoutRadius", swap(R"(, "radius": 3)", ""),
     missing, "/conductors/0/corners/0", R"(expected "radius", found nothing)"},
    {"CornerRadiusNegative", swap(R"("radius": 3)", R"("radius": -3)"),
     outOfRange, "/conductors/0/corners/0/radius", "expected 0 to 600 in, found -3 in"},
    {"CornerAtIsAList", swap(R"({"x": 10, "y": 6.5, "z": 3})", "[10, 6.5, 3]"),
     syntax, "/conductors/0/corners/0/at", "expected an object, found an array"},
    {"PassThroughABlindPort", swap(R"("port": "2")", R"("port": "1")"),
     contradicts, "/conductors/1/passes/0/port", R"(expected a port that a conductor can pass through, found "1")"},
    {"PassTwice", swap(R"("passes": [)", R"("passes": [{"block": "B1", "port": "2"},)"),
     duplicate, "/conductors/1/passes/1/port", R"(found "2")"},
    {"PassWindowNegative", swap(R"("windowLength": 2.5)", R"("windowLength": -2.5)"),
     outOfRange, "/conductors/1/passes/0/windowLength", "expected 0 to 100 in, found -2.5 in"},
    {"RemarkWithoutText", swap(R"("text": "Which way does the tap leave", "item")", R"("item")"),
     missing, "/remarks/0", R"(expected "text", found nothing)"},
    {"RemarkOnNothing", swap(R"("item": "C3")", R"("item": "C9")"),
     dangling, "/remarks/0/item", R"(expected the id of one that is there, found "C9")"},
    {"PartWithOnePort", swap(R"("ports": [)", R"("ports": [], "unused": [)"),
     outOfRange, "/parts/0/ports", "expected 2 to 100 ports, found 0"},
    {"PartPortTwice", swap(R"({"name": "3")", R"({"name": "2")"),
     duplicate, "/parts/0/ports/2", R"(found "2")"},
    {"PartIdTaken", swap(R"("volts": 600}})", R"("volts": 600}}, {"id": "P1", "name": "Other", "family": "row", "body": {"length": 4, "height": 2, "depth": 2}, "ports": [{"name": "1", "mouth": {"x": 1, "y": 0, "z": 1}, "direction": "+y", "opening": "near", "boreDepth": 1, "boreDiameter": 0.75}, {"name": "2", "mouth": {"x": 2, "y": 0, "z": 1}, "direction": "+y", "opening": "near", "boreDepth": 1, "boreDiameter": 0.75}], "screws": []})"),
     duplicate, "/parts/1/id", R"(found "P1")"},
    {"PartPortOffTheBody", swap(R"({"x": 2, "y": 2, "z": 1})", R"({"x": 2, "y": 1.5, "z": 1})"),
     contradicts, "/parts/0/ports/1", "expected a mouth on the body's surface, the direction into the body, found one elsewhere"},
    {"PartBoreThroughTheBody", swap(R"("both", "boreDepth": 2)", R"("both", "boreDepth": 2.5)"),
     contradicts, "/parts/0/ports/1", "expected a bore that ends inside the body, found one that leaves it"},
    {"PartPortAskew", swap(R"({"x": 2, "y": 2, "z": 1}, "direction": "-y")", R"({"x": 2, "y": 2, "z": 1}, "direction": "up")"),
     unknown, "/parts/0/ports/1/direction", R"(expected +x, -x, +y, -y, +z or -z, found "up")"},
    {"PartRangeBackwards", swap(R"("smallest": "6", "largest": "250", "conductors")", R"("smallest": "500", "largest": "250", "conductors")"),
     contradicts, "/parts/0/ports/0/accepts/0/largest", "expected at least 500, found 250"},
    {"PartScrewOfNoPort", swap(R"("s1", "port": "1")", R"("s1", "port": "7")"),
     dangling, "/parts/0/screws/0/port", R"(expected a port of this part, found "7")"},
    {"PartTorqueZero", swap(R"("poundInches": 275)", R"("poundInches": 0)"),
     outOfRange, "/parts/0/screws/0/torque/0/poundInches", "expected 1 to 2000, found 0"},
    {"PartBodyMissing", swap(R"("body": {"length": 4, "height": 2, "depth": 2},)", ""),
     missing, "/parts/0", R"(expected "body", found nothing)"},
    {"PartListedForUnknownKind", swap(R"("wire connector")", R"("miracle")"),
     unknown, "/parts/0/listing/kind", R"(expected wire connector or distribution block, found "miracle")"},
    {"NulAfterTheEnd", append("\0"s),
     syntax, "line 58, column 1", "expected JSON in UTF-8, found a byte 0"},
    {"MemberTwiceByEscape", swap(R"("title": "Small",)", R"("title": "Small", "\u0074itle": "Large",)"),
     duplicate, "/title", R"(expected each member once, found "title" again)"},
    {"NestedTenThousandDeep", swap(R"("Small")", std::string(10'000, '[') + std::string(10'000, ']')),
     outOfRange, "/title" + times(63, "/0"), "expected at most 64 levels, found more"},
    {"ListOfTwentyThousandAndTwo", swap(R"("entries": [)", R"("entries": [)" + times(20'000, "{}, ")),
     outOfRange, "/entries", "expected at most 20000 items, found 20002"},
    };
    return kRows;
}
// clang-format on

std::string bytesOf(const BadLayout& row) {
    return row.spoil(goodLayout());
}

const std::string& goodLayout() {
    static const std::string kBytes =
        readFile((std::filesystem::path(GW_SOURCE_DIR) / "tests/data/layouts/small.json").string())
            .value();
    return kBytes;
}

}  // namespace gw::test

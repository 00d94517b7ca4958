#include "base/json_reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

namespace gw {
namespace {

using testing::HasSubstr;

Error parseError(const std::string& bytes) {
    const auto document = JsonDocument::parse(bytes, "yard.json");
    return document ? Error{ErrorCode::syntax, "no error"} : document.error();
}

// ---- what the text may be -------------------------------------------------------------------

struct BadText {
    const char* name;
    std::string bytes;
    ErrorCode code;
    const char* place;
    const char* sentence;  ///< part of it
    const char* found;     ///< part of it
};

void PrintTo(const BadText& row, std::ostream* out) {
    *out << row.bytes.substr(0, 60);
}

std::string badTextName(const testing::TestParamInfo<BadText>& row) {
    return row.param.name;
}

class JsonText : public testing::TestWithParam<BadText> {};

TEST_P(JsonText, IsRefusedWithItsPlace) {
    const BadText& row = GetParam();
    const Error error = parseError(row.bytes);
    EXPECT_EQ(error.code, row.code);
    EXPECT_EQ(error.place, row.place);
    EXPECT_THAT(error.sentence, HasSubstr(row.sentence));
    EXPECT_THAT(error.found, HasSubstr(row.found));
    EXPECT_EQ(error.file, "yard.json");
    EXPECT_EQ(toLine(error).find('\n'), std::string::npos);
}

std::string nested(int levels) {
    std::string text;
    text.append(static_cast<std::size_t>(levels), '[');
    text.append(static_cast<std::size_t>(levels), ']');
    return text;
}

using namespace std::string_literals;

// Places counted by hand: lines and columns from 1, columns in characters.
// clang-format off
const BadText kBadTexts[] = {
    {"Empty",               "",                              ErrorCode::syntax,     "", "the file is empty", "nothing"},
    {"OnlySpace",           "  \n ",                         ErrorCode::syntax,     "", "the file is empty", "nothing"},
    {"CutOff",              "{\"a\": [1,",                   ErrorCode::syntax,     "line 1, column 10","end of input",   ""},
    {"Utf16",               "\xFF\xFE{\0}\0"s,               ErrorCode::syntax,     "",                 "UTF-8",          "UTF-16"},
    {"TrailingComma",       "{\n \"a\": 1,\n}",              ErrorCode::syntax,     "line 3, column 1", "'}'",            "}"},
    {"TrailingText",        "{} x",                          ErrorCode::syntax,     "line 1, column 4", "not valid JSON", "x"},
    {"Comment",             "{ // why\n}",                   ErrorCode::syntax,     "line 1, column 3", "not valid JSON", "/"},
    {"SingleQuotes",        "{'a': 1}",                      ErrorCode::syntax,     "line 1, column 2", "not valid JSON", "'"},
    {"ColumnsCountCharacters", "[\"½½\", x]",                ErrorCode::syntax,     "line 1, column 8", "not valid JSON", "x"},
    {"NotANumber",          "{\"a\": NaN}",                  ErrorCode::syntax,     "line 1, column 7", "not valid JSON", "N"},
    {"Infinity",            "{\"a\": Infinity}",             ErrorCode::syntax,     "line 1, column 7", "not valid JSON", "I"},
    {"MinusInfinity",       "{\"a\": -Infinity}",            ErrorCode::syntax,     "line 1, column 8", "not valid JSON", "I"},
    {"LeadingZero",         "[012]",                         ErrorCode::syntax,     "line 1, column 3", "not valid JSON", "1"},
    {"NumberTooLarge",      "{\n\"a\": 1e999}",              ErrorCode::outOfRange, "line 2, column 6", "too large",      "1e999"},
    {"NumberTooNegative",   "[-1e999]",                      ErrorCode::outOfRange, "line 1, column 2", "too large",      "-1e999"},
    {"WordOutOfPlace",      "{\"a\"  true}",                 ErrorCode::syntax,     "line 1, column 7", "true literal",   "true"},
    {"TextOutOfPlace",      "{\"a\": 1\n  \"b\": 2}",       ErrorCode::syntax,     "line 2, column 3", "string literal", "\"b\""},
    {"NotAscii",            "[½]",                           ErrorCode::syntax,     "line 1, column 2", "not valid JSON", "½"},
    {"BadUtf8",             "{\"a\": \"\xC3\x28\"}",         ErrorCode::syntax,     "line 1, column 9", "UTF-8",          "not UTF-8"},
    // Once the byte went into the line by way of the library's message.
    {"NumberWithABadByte",  "[0.\xFF]",                      ErrorCode::syntax,     "line 1, column 4", "invalid number", "not UTF-8"},
    {"OverlongUtf8",        "[\"\xC0\xAF\"]",                ErrorCode::syntax,     "line 1, column 3", "UTF-8",          "not UTF-8"},
    {"LoneSurrogate",       "[\"\\uD800\"]",                 ErrorCode::syntax,     "line 1, column 9", "surrogate",      ""},
    {"BareNul",             "[\"a\0b\"]"s,                   ErrorCode::syntax,     "line 1, column 4", "NUL byte",       "a byte 0"},
    {"NulAfterTheEnd",      "{}\n\0{"s,                       ErrorCode::syntax,     "line 2, column 1", "NUL byte",       "a byte 0"},
    {"EscapedNul",          "{\"a\": [1, \"x\\u0000\"]}",    ErrorCode::syntax,     "/a/1",             "control",        ""},
    {"EscapedBell",         "[\"\\u0007\"]",                 ErrorCode::syntax,     "/0",               "control",        ""},
    {"EscapedTab",          "[\"a\\tb\"]",                   ErrorCode::syntax,     "/0",               "control",        ""},
    {"EscapedDelete",       "[\"a\\u007Fb\"]",               ErrorCode::syntax,     "/0",               "control",        ""},
    {"EscapedC1",           "[\"a\\u0085b\"]",               ErrorCode::syntax,     "/0",               "control",        ""},
    {"ControlInName",       "{\"b\": {\"a\\n\": 1}}",        ErrorCode::syntax,     "/b/",              "control",        ""},
    {"MemberTwice",         "{\"a\": 1, \"a\": 2}",          ErrorCode::duplicate,  "/a",               "twice",          "\"a\""},
    {"MemberTwiceInside",   "{\"p\": [0, {\"a\": 1, \"b\": {\"a\": 3}, \"a\": 2}]}",
                                                             ErrorCode::duplicate,  "/p/1/a",           "twice",          "\"a\""},
    {"MemberTwiceByEscape", "{\"a\": 1, \"\\u0061\": 2}",    ErrorCode::duplicate,  "/a",               "twice",          "\"a\""},
    {"PointerIsEscaped",    "{\"a/b~c\": [\"\\u0001\"]}",    ErrorCode::syntax,     "/a~1b~0c/0",       "control",        ""},
    {"TooDeep",             nested(JsonDocument::kMostLevels + 1),       ErrorCode::outOfRange,
        "/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0"
        "/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0", "deep", "more"},
    {"TooLarge",            std::string(JsonDocument::kMostBytes + 1, ' '), ErrorCode::outOfRange, "", "too large", "16000001 bytes"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Strict, JsonText, testing::ValuesIn(kBadTexts), badTextName);

TEST(JsonDocument, AMillionLevelsAreRefusedWithoutReadingThem) {
    EXPECT_EQ(parseError(std::string(1'000'000, '[')).code, ErrorCode::outOfRange);
    std::string objects;
    for (int i = 0; i < 100'000; ++i) {
        objects += "{\"a\":";
    }
    EXPECT_EQ(parseError(objects).code, ErrorCode::outOfRange);
}

TEST(JsonDocument, ManyMembersOfOneObjectAreReadInNoTimeToSpeakOf) {
    std::string text = "{";
    for (int i = 0; i < 200'000; ++i) {
        text += "\"member" + std::to_string(i) + "\":0,";
    }
    text += "\"last\":1}";
    const auto document = JsonDocument::parse(text, "yard.json");
    ASSERT_TRUE(document.has_value());
    EXPECT_TRUE(document->root().object().optional("last").has_value());
}

TEST(JsonDocument, WhatTheStandardAllowsIsRead) {
    for (const std::string& text :
         {"\xEF\xBB\xBF{\"a\": 1}"s, "\r\n\t {\"a\" :1 }\n"s, "{\"\\u0061\": 1.0e0}"s}) {
        const auto document = JsonDocument::parse(text, "yard.json");
        ASSERT_TRUE(document.has_value()) << toLine(document.error());
        EXPECT_EQ(document->root().object().required("a").number(0, 2), 1.0);
        EXPECT_FALSE(document->problem().has_value());
    }
    EXPECT_TRUE(JsonDocument::parse(nested(JsonDocument::kMostLevels), "yard.json").has_value());
    const std::string padded = "7" + std::string(JsonDocument::kMostBytes - 1, ' ');
    EXPECT_TRUE(JsonDocument::parse(padded, "yard.json").has_value());
}

// ---- what a value may be --------------------------------------------------------------------

std::optional<int> wallOf(std::string_view word) {
    return word == "left" ? std::optional(1) : word == "right" ? std::optional(2) : std::nullopt;
}

using ReadOne = std::string (*)(const JsonValue&);

/// Reads a value by one of the accessors and gives what came out as text.
std::string readBy(const std::string& how, const JsonValue& v) {
    static const std::map<std::string, ReadOne> kAccessors = {
        {"number", [](const JsonValue& x) { return std::to_string(x.number(-1, 1200)); }},
        {"integer", [](const JsonValue& x) { return std::to_string(x.integer(1, 20)); }},
        {"signed", [](const JsonValue& x) { return std::to_string(x.integer(-5, -1)); }},
        {"boolean", [](const JsonValue& x) { return std::string(x.boolean() ? "yes" : "no"); }},
        {"text", [](const JsonValue& x) { return x.text(5); }},
        {"wall",
         [](const JsonValue& x) {
             return std::to_string(x.one(wallOf, "left or right").value_or(0));
         }},
        {"items", [](const JsonValue& x) { return std::to_string(x.items().size()); }},
    };
    return kAccessors.at(how)(v);
}

struct GoodValue {
    const char* name;
    const char* how;
    const char* json;
    const char* value;
};

void PrintTo(const GoodValue& row, std::ostream* out) {
    *out << row.how << " " << row.json;
}

std::string goodValueName(const testing::TestParamInfo<GoodValue>& row) {
    return row.param.name;
}

class JsonGoodValue : public testing::TestWithParam<GoodValue> {};

TEST_P(JsonGoodValue, IsRead) {
    const std::string text = "{\"v\": " + std::string(GetParam().json) + "}";
    const auto document = JsonDocument::parse(text, "yard.json");
    ASSERT_TRUE(document.has_value()) << toLine(document.error());
    const auto value = readBy(GetParam().how, document->root().object().required("v"));
    EXPECT_FALSE(document->problem().has_value()) << toLine(*document->problem());
    EXPECT_EQ(value, GetParam().value);
}

// clang-format off
const GoodValue kGoodValues[] = {
    {"WholeAsNumber",      "number",  "5",            "5.000000"},
    {"Fraction",           "number",  "5.25",         "5.250000"},
    {"Exponent",           "number",  "12e2",         "1200.000000"},
    {"LowestNumber",       "number",  "-1",           "-1.000000"},
    {"MinusZeroIsZero",    "number",  "-0.0",         "0.000000"},
    {"Underflow",          "number",  "1E-400",       "0.000000"},
    {"LowestInteger",      "integer", "1",            "1"},
    {"HighestInteger",     "integer", "20",           "20"},
    {"WholeWithPoint",     "integer", "3.0",          "3"},
    {"LowestSigned",       "signed",  "-5",           "-5"},
    {"True",               "boolean", "true",         "yes"},
    {"False",              "boolean", "false",        "no"},
    {"EmptyText",          "text",    "\"\"",         ""},
    {"LongestText",        "text",    "\"abcde\"",    "abcde"},
    {"Accents",            "text",    "\"½é\"",       "½é"},
    {"Escapes",            "text",    "\"\\u00bd\\\"\"", "½\""},
    {"FirstWord",          "wall",    "\"left\"",     "1"},
    {"LastWord",           "wall",    "\"right\"",    "2"},
    {"NoItems",            "items",   "[]",           "0"},
    {"Items",              "items",   "[1, [], {}]",  "3"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Accessors, JsonGoodValue, testing::ValuesIn(kGoodValues), goodValueName);

struct BadValue {
    const char* name;
    const char* how;
    std::string json;
    ErrorCode code;
    const char* expected;
    const char* found;
};

void PrintTo(const BadValue& row, std::ostream* out) {
    *out << row.how << " " << row.json.substr(0, 60);
}

std::string badValueName(const testing::TestParamInfo<BadValue>& row) {
    return row.param.name;
}

class JsonBadValue : public testing::TestWithParam<BadValue> {};

TEST_P(JsonBadValue, IsRefusedSayingWhatWasExpectedAndFound) {
    const BadValue& row = GetParam();
    const auto document = JsonDocument::parse("{\"v\": " + row.json + "}", "yard.json");
    ASSERT_TRUE(document.has_value()) << toLine(document.error());
    readBy(row.how, document->root().object().required("v"));
    ASSERT_TRUE(document->problem().has_value());
    EXPECT_EQ(document->problem()->code, row.code);
    EXPECT_EQ(document->problem()->file, "yard.json");
    EXPECT_EQ(document->problem()->place, "/v");
    EXPECT_EQ(document->problem()->expected, row.expected);
    EXPECT_EQ(document->problem()->found, row.found);
    EXPECT_FALSE(document->finish(1).has_value());
}

// clang-format off
const BadValue kBadValues[] = {
    {"TextForNumber",     "number",  "\"5\"",       ErrorCode::syntax,     "a number",         "\"5\""},
    {"NullForNumber",     "number",  "null",        ErrorCode::syntax,     "a number",         "null"},
    {"TrueForNumber",     "number",  "true",        ErrorCode::syntax,     "a number",         "true"},
    {"BelowNumber",       "number",  "-1.5",        ErrorCode::outOfRange, "-1 to 1200",       "-1.5"},
    {"AboveNumber",       "number",  "1200.5",      ErrorCode::outOfRange, "-1 to 1200",       "1200.5"},
    {"FractionForWhole",  "integer", "2.5",         ErrorCode::syntax,     "a whole number",   "2.5"},
    {"BelowWhole",        "integer", "0",           ErrorCode::outOfRange, "1 to 20",          "0"},
    {"NegativeWhole",     "integer", "-7",          ErrorCode::outOfRange, "1 to 20",          "-7"},
    {"AboveWhole",        "integer", "21",          ErrorCode::outOfRange, "1 to 20",          "21"},
    {"Beyond31Bits",      "integer", "3000000000",  ErrorCode::outOfRange, "1 to 20",          "3000000000"},
    {"Beyond32Bits",      "integer", "4294967297",  ErrorCode::outOfRange, "1 to 20",          "4294967297"},
    {"Beyond63Bits",      "integer", "18446744073709551615", ErrorCode::outOfRange, "1 to 20", "18446744073709551615"},
    {"Beyond64Bits",      "integer", "18446744073709551617", ErrorCode::outOfRange, "1 to 20", "1.8446744073709552e+19"},
    {"PositiveForSigned", "signed",  "3",           ErrorCode::outOfRange, "-5 to -1",         "3"},
    {"NumberForBoolean",  "boolean", "1",           ErrorCode::syntax,     "true or false",    "1"},
    {"NumberForText",     "text",    "500",         ErrorCode::syntax,     "a text",           "500"},
    {"ArrayForText",      "text",    "[1, 2]",      ErrorCode::syntax,     "a text",           "an array"},
    {"ObjectForText",     "text",    "{\"a\": 1}",  ErrorCode::syntax,     "a text",           "an object"},
    {"TextTooLong",       "text",    "\"abcdef\"",  ErrorCode::outOfRange, "at most 5 bytes",  "6 bytes"},
    {"UnknownWord",       "wall",    "\"Left\"",    ErrorCode::unknown,    "left or right",    "\"Left\""},
    {"NumberForWord",     "wall",    "1",           ErrorCode::syntax,     "a text",           "1"},
    {"ObjectForItems",    "items",   "{}",          ErrorCode::syntax,     "an array",         "an object"},
    // 40 characters are kept less one for the ellipsis: the quote and 38 letters.
    {"FoundIsCut",        "number",  '"' + std::string(5000, 'x') + '"', ErrorCode::syntax, "a number",
        "\"xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx…"},
    {"UnknownWordIsCut",  "wall",    '"' + std::string(300, 'x') + '"', ErrorCode::unknown, "left or right",
        "\"xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx…"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Accessors, JsonBadValue, testing::ValuesIn(kBadValues), badValueName);

TEST(JsonValue, WhatWasFoundIsCutBetweenCharacters) {
    std::string halves;
    for (int i = 0; i < 60; ++i) {
        halves += "½";
    }
    const auto document = JsonDocument::parse("[\"" + halves + "\"]", "yard.json");
    ASSERT_TRUE(document.has_value());
    EXPECT_EQ(document->root().items().at(0).excerpt(),
              "\"½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½½…");  // 38 of them
}

// ---- objects and arrays ---------------------------------------------------------------------

TEST(JsonObject, UnknownMemberIsNamedWithThoseKnown) {
    const auto document = JsonDocument::parse(R"({"wide": 1, "height": 2, "heigth": 3})", "y.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    object.required("height").number(0, 9);
    object.optional("wide");
    object.optional("deep");
    object.done();
    EXPECT_EQ(toLine(*document->problem()),
              "y.json: /heigth: a member we do not know (expected height, wide, deep, found "
              "\"heigth\")");
    EXPECT_EQ(document->problem()->code, ErrorCode::unknown);
}

TEST(JsonObject, WhenAllWereAskedForItIsDone) {
    const auto document = JsonDocument::parse(R"({"wide": 1, "deep": 2})", "yard.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    object.required("deep");
    object.optional("wide");
    object.done();
    EXPECT_EQ(document->finish(7).value(), 7);
}

TEST(JsonObject, PointerEscapesTheMembersName) {
    const auto document = JsonDocument::parse(R"({"a/b~c": [{"d": 1}]})", "yard.json");
    ASSERT_TRUE(document.has_value());
    const auto items = document->root().object().required("a/b~c").items();
    EXPECT_EQ(items.at(0).object().required("d").pointer(), "/a~1b~0c/0/d");  // RFC 6901, 3
}

TEST(JsonObject, MissingMemberIsNamed) {
    const auto document = JsonDocument::parse(R"({"p": [{}, {}]})", "yard.json");
    ASSERT_TRUE(document.has_value());
    const auto items = document->root().object().required("p").items();
    EXPECT_EQ(items.at(1).object().required("id").text(), "");
    EXPECT_EQ(toLine(*document->problem()),
              "yard.json: /p/1: a member is missing (expected \"id\", found nothing)");
    EXPECT_EQ(document->problem()->code, ErrorCode::missing);
}

TEST(JsonObject, SomethingElseIsNoObjectAndAnswersHarmlessly) {
    const auto document = JsonDocument::parse("[1]", "yard.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    EXPECT_EQ(object.required("a").integer(7, 9), 7);
    EXPECT_EQ(object.required("b").number(-3, 9), -3);
    EXPECT_EQ(object.required("c").text(), "");
    EXPECT_FALSE(object.required("d").boolean());
    EXPECT_TRUE(object.required("e").items().empty());
    EXPECT_FALSE(object.required("f").isText() || object.required("f").isObject());
    EXPECT_FALSE(object.optional("g").has_value());
    object.done();
    EXPECT_EQ(toLine(*document->problem()),
              "yard.json: /: the wrong kind of value (expected an object, found an array)");
}

TEST(JsonObject, MembersThatMayBeLeftOutAreReadWhereTheyAre) {
    const auto document = JsonDocument::parse(
        R"({"t": "x", "f": false, "n": 2.5, "i": 3, "l": [1, 2], "w": "right"})", "yard.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    EXPECT_EQ(object.textIf("t"), "x");
    EXPECT_EQ(object.flagIf("f"), false);
    EXPECT_EQ(object.numberIf("n", 0, 9), 2.5);
    EXPECT_EQ(object.integerIf("i", 0, 9), 3);
    EXPECT_EQ(object.itemsIf("l").size(), 2U);
    EXPECT_EQ(object.oneIf("w", wallOf, "left or right"), 2);
    object.done();
    EXPECT_FALSE(document->problem().has_value());
}

TEST(JsonObject, MembersThatMayBeLeftOutAreNothingWhereTheyAreNot) {
    const auto document = JsonDocument::parse("{}", "yard.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    EXPECT_FALSE(object.textIf("t").has_value());
    EXPECT_FALSE(object.flagIf("f").has_value());
    EXPECT_FALSE(object.numberIf("n", 1, 9).has_value());
    EXPECT_FALSE(object.integerIf("i", 1, 9).has_value());
    EXPECT_TRUE(object.itemsIf("l").empty());
    EXPECT_FALSE(object.oneIf("w", wallOf, "left or right").has_value());
    EXPECT_FALSE(document->problem().has_value());
}

/// null is a value of the wrong kind, not a member left out.
TEST(JsonObject, NullIsNotLeftOut) {
    const auto document = JsonDocument::parse(R"({"t": null})", "yard.json");
    ASSERT_TRUE(document.has_value());
    document->root().object().textIf("t");
    EXPECT_EQ(document->problem()->found, "null");
}

TEST(JsonValue, IdIsATextAnIdMayBe) {
    const auto document = JsonDocument::parse(R"(["A-1_b.c", "-a"])", "yard.json");
    ASSERT_TRUE(document.has_value());
    const auto items = document->root().items();
    EXPECT_EQ(items.at(0).idText(), "A-1_b.c");
    EXPECT_FALSE(document->problem().has_value());
    items.at(1).idText();
    EXPECT_EQ(document->problem()->place, "/1");
    EXPECT_EQ(document->problem()->sentence, "not an id");
}

TEST(JsonValue, ListIsReadUpToItsLongest) {
    std::string text = "[0";
    for (std::size_t i = 1; i < JsonDocument::kMostItems; ++i) {
        text += ",0";
    }
    const auto longest = JsonDocument::parse(text + "]", "yard.json");
    EXPECT_EQ(longest->root().items().size(), JsonDocument::kMostItems);
    const auto longer = JsonDocument::parse(text + ",0]", "yard.json");
    EXPECT_TRUE(longer->root().items().empty());
    EXPECT_EQ(longer->problem()->expected, "at most 20000 items");
    EXPECT_EQ(longer->problem()->found, "20001");
}

struct HeadRow {
    const char* name;
    const char* json;
    const char* line;  ///< of the problem; empty: none
};

void PrintTo(const HeadRow& row, std::ostream* out) {
    *out << row.json;
}

std::string headName(const testing::TestParamInfo<HeadRow>& row) {
    return row.param.name;
}

class JsonHead : public testing::TestWithParam<HeadRow> {};

TEST_P(JsonHead, IsOfTheFormatAndNoLaterThanItsVersion) {
    const auto document = JsonDocument::parse(GetParam().json, "y.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    readFormat(object, "yard", 2, "a yard file");
    EXPECT_EQ(document->problem() ? toLine(*document->problem()) : "", GetParam().line);
}

// clang-format off
const HeadRow kHeads[] = {
    {"Now",     R"({"format": "yard", "version": 2})", ""},
    {"Earlier", R"({"format": "yard", "version": 1})", ""},
    {"Later",   R"({"format": "yard", "version": 3})",
        "y.json: /version: the file was written by a later version of the program (expected version 2, found version 3)"},
    {"Zero",    R"({"format": "yard", "version": 0})",
        "y.json: /version: the number makes no sense here (expected 1 to 1000000, found 0)"},
    {"Other",   R"({"format": "barn", "version": 2})",
        "y.json: /format: not a yard file (expected \"yard\", found \"barn\")"},
    {"None",    R"({"version": 2})",
        "y.json: /: a member is missing (expected \"format\", found nothing)"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Versions, JsonHead, testing::ValuesIn(kHeads), headName);

TEST(JsonDocument, AfterTheFirstProblemNothingIsThere) {
    const auto document = JsonDocument::parse(R"({"a": {"b": 1}, "c": [1, 2]})", "yard.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    object.required("none");
    EXPECT_TRUE(object.required("c").items().empty());
    EXPECT_FALSE(object.required("a").object().optional("b").has_value());
}

TEST(JsonDocument, OnlyTheFirstProblemIsKept) {
    const auto document = JsonDocument::parse(R"({"a": "x", "b": "y"})", "yard.json");
    ASSERT_TRUE(document.has_value());
    auto object = document->root().object();
    object.required("b").boolean();
    object.required("a").boolean();
    object.required("c");
    EXPECT_EQ(document->finish(0).error().place, "/b");
}

TEST(JsonDocument, ValuesOutliveTheMoveOfTheirDocument) {
    auto first = JsonDocument::parse("{\"a\": 4}", "yard.json");
    ASSERT_TRUE(first.has_value());
    const JsonValue root = first->root();
    const JsonDocument second = std::move(*first);
    EXPECT_EQ(root.object().required("a").integer(0, 9), 4);
    EXPECT_FALSE(second.problem().has_value());
}

}  // namespace
}  // namespace gw

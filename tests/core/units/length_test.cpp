#include "units/length.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <charconv>
#include <cmath>
#include <random>
#include <string>

namespace gw::units {
namespace {

using testing::HasSubstr;

// --- reading ---------------------------------------------------------------------------------

struct Typed {
    const char* name;
    const char* text;
    LengthUnit unitless;
    double inches;
    const char* arithmetic;
};

void PrintTo(const Typed& row, std::ostream* out) {
    *out << row.text << ": " << row.arithmetic;
}

std::string caseName(const testing::TestParamInfo<Typed>& row) {
    return row.param.name;
}

class ParseLength : public testing::TestWithParam<Typed> {};

TEST_P(ParseLength, GivesTheLength) {
    const Typed& row = GetParam();
    const auto length = parseLength(row.text, row.unitless);
    ASSERT_TRUE(length.has_value()) << toLine(length.error());
    EXPECT_DOUBLE_EQ(length->in(), row.inches);
}

constexpr auto kIn = LengthUnit::inch;
constexpr auto kMm = LengthUnit::millimetre;

// clang-format off
const Typed kTyped[] = {
    {"Whole",                "5",                 kIn, 5.0,          "5"},
    {"Decimal",              "5.5",               kIn, 5.5,          "5.5"},
    {"DecimalNoWhole",       ".5",                kIn, 0.5,          "0.5"},
    {"DecimalNoDecimals",    "5.",                kIn, 5.0,          "5"},
    {"LeadingZeros",         "005.500",           kIn, 5.5,          "5.5"},
    {"Fraction",             "3/16",              kIn, 0.1875,       "3/16"},
    {"Mixed",                "5 1/2",             kIn, 5.5,          "5 + 1/2"},
    {"MixedHyphen",          "5-1/2\"",           kIn, 5.5,          "5 + 1/2"},
    {"MixedInchesNoSpace",   "5 1/2in",           kIn, 5.5,          "5 + 1/2"},
    {"SixtyFourths",         "2 63/64",           kIn, 2.984375,     "2 + 63/64"},
    {"UnicodeHalf",          "5½",                kIn, 5.5,          "5 + 1/2"},
    {"UnicodeHalfSpaced",    "5 ½ in",            kIn, 5.5,          "5 + 1/2"},
    {"UnicodeHalfAlone",     "½\"",               kIn, 0.5,          "1/2"},
    {"UnicodeSevenEighths",  "5⅞",                kIn, 5.875,        "5 + 7/8"},
    {"UnicodeQuarters",      "1¼",                kIn, 1.25,         "1 + 1/4"},
    {"UnicodeThreeQuarters", "1¾",                kIn, 1.75,         "1 + 3/4"},
    {"UnicodeEighth",        "1⅛",                kIn, 1.125,        "1 + 1/8"},
    {"UnicodeThreeEighths",  "1⅜",                kIn, 1.375,        "1 + 3/8"},
    {"UnicodeFiveEighths",   "1⅝",                kIn, 1.625,        "1 + 5/8"},
    {"FractionSlash",        "5 1⁄2",             kIn, 5.5,          "5 + 1/2"},
    {"DecimalInches",        "5.5 in",            kIn, 5.5,          "5.5"},
    {"InchesAbbreviated",    "5.5 in.",           kIn, 5.5,          "5.5"},
    {"InchesSpelled",        "5.5 Inches",        kIn, 5.5,          "5.5"},
    {"InchMark",             "5.5\"",             kIn, 5.5,          "5.5"},
    {"TwoSinglePrimes",      "5.5''",             kIn, 5.5,          "5.5"},
    {"DoublePrime",          "5.5″",              kIn, 5.5,          "5.5"},
    {"CurlyQuotes",          "1’ 3”",             kIn, 15.0,         "12 + 3"},
    {"Millimetres",          "140mm",             kIn, 140.0 / 25.4, "140/25.4"},
    {"MillimetresSpaced",    "140 mm",            kIn, 140.0 / 25.4, "140/25.4"},
    {"MillimetresUpper",     "140 MM",            kIn, 140.0 / 25.4, "140/25.4"},
    {"Centimetres",          "14 cm",             kIn, 140.0 / 25.4, "14 x 10/25.4"},
    {"Feet",                 "2'",                kIn, 24.0,         "2 x 12"},
    {"FeetSpelled",          "2 feet",            kIn, 24.0,         "2 x 12"},
    {"FeetDecimal",          "2.5 ft",            kIn, 30.0,         "2.5 x 12"},
    {"FeetFraction",         "1/2 ft",            kIn, 6.0,          "12/2"},
    {"FeetInches",           "1' 3 1/4\"",        kIn, 15.25,        "12 + 3 + 1/4"},
    {"FeetInchesTight",      "1'3\"",             kIn, 15.0,         "12 + 3"},
    {"FeetInchesNoMark",     "1' 3 1/4",          kIn, 15.25,        "12 + 3 + 1/4"},
    {"FeetInchesHyphens",    "5' 6-1/2\"",        kIn, 66.5,         "60 + 6 + 1/2"},
    {"FeetDashInches",       "5'-6 1/2\"",        kIn, 66.5,         "60 + 6 + 1/2"},
    {"FeetSpacedDashInches", "5' - 6\"",          kIn, 66.0,         "60 + 6"},
    {"FeetWordsInches",      "1 ft 3 in",         kIn, 15.0,         "12 + 3"},
    {"FeetAbbreviated",      "1 ft. 3 in.",       kIn, 15.0,         "12 + 3"},
    {"PrimesFeetInches",     "5′ 6½″",            kIn, 66.5,         "60 + 6 + 1/2"},
    {"Negative",             "-2 1/4",            kIn, -2.25,        "-(2 + 1/4)"},
    {"NegativeFeet",         "-1' 6\"",           kIn, -18.0,        "-(12 + 6)"},
    {"MinusSign",            "−3/16",             kIn, -0.1875,      "-3/16"},
    {"SpaceEverywhere",      " \t 5   1/2   in ", kIn, 5.5,          "5 + 1/2"},
    {"NonBreakingSpace",     "5\u00A0" "1/2",     kIn, 5.5,          "5 + 1/2"},
    {"ThinSpace",            "140\u2009mm",       kIn, 140.0 / 25.4, "140/25.4"},
    {"BareNumberMetric",     "140",               kMm, 140.0 / 25.4, "140/25.4"},
    {"InchMarkWhereMetric",  "5 1/2\"",           kMm, 5.5,          "5 + 1/2: a unit typed wins"},
    {"FeetWhereMetric",      "1' 3",              kMm, 15.0,         "12 + 3: after feet come inches"},
    {"Longest",              "100 ft",            kIn, 1200.0,       "100 x 12, the greatest allowed"},
    {"LongestNegative",      "-1200",             kIn, -1200.0,      "the least allowed"},
    {"Zero",                 "0",                 kIn, 0.0,          "0"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(AsPeopleType, ParseLength, testing::ValuesIn(kTyped), caseName);

TEST(ParseLength, MinusZeroIsZero) {
    const auto zero = parseLength("-0");
    ASSERT_TRUE(zero.has_value());
    EXPECT_FALSE(std::signbit(zero->in()));
}

struct Junk {
    const char* name;
    const char* text;
    ErrorCode code;
    const char* sentence;
};

void PrintTo(const Junk& row, std::ostream* out) {
    *out << row.text;
}

std::string junkName(const testing::TestParamInfo<Junk>& row) {
    return row.param.name;
}

class ParseLengthJunk : public testing::TestWithParam<Junk> {};

TEST_P(ParseLengthJunk, SaysWhatIsWrong) {
    const Junk& row = GetParam();
    const auto length = parseLength(row.text);
    ASSERT_FALSE(length.has_value()) << length->in();
    EXPECT_EQ(length.error().code, row.code);
    EXPECT_THAT(length.error().sentence, HasSubstr(row.sentence));
    EXPECT_FALSE(length.error().expected.empty());
    EXPECT_FALSE(length.error().found.empty());
}

// clang-format off
const Junk kJunk[] = {
    {"Empty",                "",                ErrorCode::syntax,     "a number is missing"},
    {"OnlySpace",            "  ",              ErrorCode::syntax,     "a number is missing"},
    {"OnlyUnit",             "in",              ErrorCode::syntax,     "a number is missing"},
    {"OnlyMinus",            "-",               ErrorCode::syntax,     "a number is missing"},
    {"TwoMinus",             "--5",             ErrorCode::syntax,     "a number is missing"},
    {"Plus",                 "+5",              ErrorCode::syntax,     "a number is missing"},
    {"Word",                 "long",            ErrorCode::syntax,     "a number is missing"},
    {"NotANumber",           "nan",             ErrorCode::syntax,     "a number is missing"},
    {"Infinity",             "inf",             ErrorCode::syntax,     "a number is missing"},
    {"Point",                ".",               ErrorCode::syntax,     "a point stands without digits"},
    {"Comma",                "5,5",             ErrorCode::syntax,     "something follows"},
    {"Exponent",             "1e3",             ErrorCode::syntax,     "the unit is not one of"},
    {"Hexadecimal",          "0x10",            ErrorCode::syntax,     "the unit is not one of"},
    {"UnknownUnit",          "5 furlongs",      ErrorCode::syntax,     "the unit is not one of"},
    {"Metres",               "2 m",             ErrorCode::syntax,     "the unit is not one of"},
    {"ZeroDenominator",      "5 1/0",           ErrorCode::syntax,     "zero denominator"},
    {"ZeroOverZero",         "0/0",             ErrorCode::syntax,     "zero denominator"},
    {"NoDenominator",        "5 1/",            ErrorCode::syntax,     "one side of its slash"},
    {"NoNumerator",          "/2",              ErrorCode::syntax,     "a number is missing"},
    {"TwoSlashes",           "1/2/3",           ErrorCode::syntax,     "something follows"},
    {"ImproperAfterWhole",   "5 17/16",         ErrorCode::syntax,     "not less than one"},
    {"DecimalThenFraction",  "5.5 1/2",         ErrorCode::syntax,     "something follows"},
    {"SubtractionOrMixed",   "5 - 1/2",         ErrorCode::syntax,     "something follows"},
    {"TwoNumbers",           "5 6",             ErrorCode::syntax,     "something follows"},
    {"TwoPoints",            "5.5.5",           ErrorCode::syntax,     "something follows"},
    {"TwoFractions",         "5½½",             ErrorCode::syntax,     "something follows"},
    {"TwoUnits",             "5 in mm",         ErrorCode::syntax,     "something follows"},
    {"InchesBeforeFeet",     "5\" 3'",          ErrorCode::syntax,     "something follows"},
    {"FeetTwice",            "5' 3'",           ErrorCode::syntax,     "only inches can follow"},
    {"MetricAfterFeet",      "5' 30 mm",        ErrorCode::syntax,     "only inches can follow"},
    {"DashAfterFeet",        "5' -",            ErrorCode::syntax,     "a number is missing"},
    {"ByteNobodyTypes",      "\xFF\xFE",        ErrorCode::syntax,     "a number is missing"},
    {"JustTooLong",          "1200 1/64",       ErrorCode::outOfRange, "beyond what a gutter can be"},
    {"JustTooLongNegative",  "-1200 1/64",      ErrorCode::outOfRange, "beyond what a gutter can be"},
    {"FarTooLong",           "99999999999999",  ErrorCode::outOfRange, "beyond what a gutter can be"},
    {"EndlessDigits",
     "1111111111111111111111111111111111111111111111111111111111111111111111111111111111111111111",
     ErrorCode::syntax, "too many digits"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(NotLengths, ParseLengthJunk, testing::ValuesIn(kJunk), junkName);

TEST(ParseLength, AnErrorQuotesALongTextShortAndWholeInItsCharacters) {
    std::string text = "x";
    for (int i = 0; i < 50; ++i) {
        text += "½";
    }
    const auto length = parseLength(text);
    ASSERT_FALSE(length.has_value());
    const std::string& found = length.error().found;
    EXPECT_LT(found.size(), 70U);
    EXPECT_EQ(found.substr(found.size() - 5), "½...");
}

// --- printing --------------------------------------------------------------------------------

struct Printed {
    const char* name;
    double inches;
    Rounding rounding;
    int denominator;
    const char* text;
};

void PrintTo(const Printed& row, std::ostream* out) {
    *out << row.inches << " in";
}

std::string printedName(const testing::TestParamInfo<Printed>& row) {
    return row.param.name;
}

class FormatInches : public testing::TestWithParam<Printed> {};

TEST_P(FormatInches, PrintsLowestTermsRoundedAsAsked) {
    const Printed& row = GetParam();
    EXPECT_EQ(formatInches(Inches::of(row.inches), row.rounding, row.denominator), row.text);
}

constexpr auto kNearest = Rounding::nearest;
constexpr auto kUp = Rounding::up;
constexpr auto kDown = Rounding::down;

// clang-format off
const Printed kPrinted[] = {
    {"Zero",                  0.0,        kNearest, 16, "0 in"},
    {"Whole",                 5.0,        kNearest, 16, "5 in"},
    {"Half",                  5.5,        kNearest, 16, "5 1/2 in"},
    {"LowestTerms",           5.75,       kNearest, 64, "5 3/4 in"},
    {"FractionOnly",          0.1875,     kNearest, 16, "3/16 in"},
    {"Negative",             -0.1875,     kNearest, 16, "-3/16 in"},
    {"NegativeMixed",        -2.25,       kNearest, 16, "-2 1/4 in"},
    {"NearestDown",           5.53,       kNearest, 16, "5 1/2 in"},       // 5.53125 is the middle
    {"NearestUp",             5.54,       kNearest, 16, "5 9/16 in"},
    {"TieAway",               5.03125,    kNearest, 16, "5 1/16 in"},      // 5 + 1/32
    {"TieAwayNegative",      -5.03125,    kNearest, 16, "-5 1/16 in"},
    {"Up",                    5.001,      kUp,      16, "5 1/16 in"},
    {"Down",                  5.999,      kDown,    16, "5 15/16 in"},
    {"UpNegative",           -5.999,      kUp,      16, "-5 15/16 in"},
    {"DownNegative",         -5.001,      kDown,    16, "-5 1/16 in"},
    {"UpToWhole",             5.95,       kUp,      16, "6 in"},
    {"NoiseIsNotRoundedUp",   5.5 + 9e-7, kUp,      16, "5 1/2 in"},
    {"NoiseIsNotRoundedDown", 5.5 - 9e-7, kDown,    16, "5 1/2 in"},
    {"BeyondNoiseRoundsUp",   5.5 + 2e-6, kUp,      16, "5 9/16 in"},
    {"BeyondNoiseRoundsDown", 5.5 - 2e-6, kDown,    16, "5 7/16 in"},
    {"NeverMinusZero",       -0.01,       kNearest, 16, "0 in"},
    {"NeverMinusZeroUp",     -0.01,       kUp,      16, "0 in"},
    {"Halves",                5.3,        kNearest,  2, "5 1/2 in"},
    {"Quarters",              5.3,        kNearest,  4, "5 1/4 in"},
    {"Eighths",               5.3,        kNearest,  8, "5 1/4 in"},       // 5.3 = 42.4/8
    {"ThirtySeconds",         5.3,        kNearest, 32, "5 5/16 in"},      // 169.6/32 -> 170
    {"SixtyFourths",          5.3,        kNearest, 64, "5 19/64 in"},     // 339.2/64
    {"StillInches",           66.5,       kNearest, 16, "66 1/2 in"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, FormatInches, testing::ValuesIn(kPrinted), printedName);

TEST(FormatInches, InchMarkIsForDrawings) {
    EXPECT_EQ(formatInchMark(Inches::of(5.5)), "5 1/2\"");
    EXPECT_EQ(formatInchMark(Inches::of(66.0)), "66\"");
    EXPECT_EQ(formatInchMark(Inches::of(5.01), Rounding::up, 8), "5 1/8\"");
}

TEST(FormatMillimetres, OneDecimalRoundedAsAsked) {
    EXPECT_EQ(formatMillimetres(Inches::of(5.5)), "139.7 mm");  // 5.5 x 25.4
    EXPECT_EQ(formatMillimetres(Inches::of(5.0)), "127 mm");    // 5 x 25.4
    EXPECT_EQ(formatMillimetres(Inches::fromMillimetres(1.04)), "1 mm");
    EXPECT_EQ(formatMillimetres(Inches::fromMillimetres(1.01), Rounding::up), "1.1 mm");
    EXPECT_EQ(formatMillimetres(Inches::fromMillimetres(1.09), Rounding::down), "1 mm");
    EXPECT_EQ(formatMillimetres(Inches::fromMillimetres(0.3), Rounding::up), "0.3 mm");
    EXPECT_EQ(formatMillimetres(Inches::fromMillimetres(0.3), Rounding::down), "0.3 mm");
    EXPECT_EQ(formatMillimetres(Inches::fromMillimetres(-0.01)), "0 mm");
}

TEST(FormatLength, InTheUnitAsked) {
    EXPECT_EQ(formatLength(Inches::of(5.5), LengthUnit::inch), "5 1/2 in");
    EXPECT_EQ(formatLength(Inches::of(5.5), LengthUnit::millimetre), "139.7 mm");
    EXPECT_EQ(formatLength(Inches::of(5.51), LengthUnit::inch, Rounding::up), "5 9/16 in");
}

TEST(FormatDecimal, CutsTrailingZeros) {
    EXPECT_EQ(formatDecimal(0.2150, 3), "0.215");
    EXPECT_EQ(formatDecimal(4.0, 2), "4");
    EXPECT_EQ(formatDecimal(100.0, 0), "100");
    EXPECT_EQ(formatDecimal(20.04, 1), "20");
    EXPECT_EQ(formatDecimal(-0.001, 2), "0");
    EXPECT_EQ(formatDecimal(-1.25, 3), "-1.25");
    EXPECT_EQ(formatDecimal(1e20, 1), "100000000000000000000");
}

/// By the standard library, which rounds the number itself, never a product.
std::string decimalByTheLibrary(double value, int decimals) {
    std::array<char, 400> buffer{};
    const auto end =
        std::to_chars(
            buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals)
            .ptr;
    std::string text(buffer.data(), end);
    if (decimals > 0) {
        text.erase(text.find_last_not_of('0') + 1);
        text.erase(text.find_last_not_of('.') + 1);
    }
    return text == "-0" ? "0" : text;
}

TEST(FormatDecimal, RoundsTheNumberAlsoNextToTheMiddle) {
    std::mt19937 random(20261126);
    std::uniform_real_distribution<double> magnitude(-7.0, 11.0);
    std::uniform_int_distribution<int> places(0, 6);
    std::uniform_int_distribution<int> steps(-2000000, 2000000);
    std::uniform_int_distribution<int> ulps(-3, 3);
    for (int i = 0; i < 200000; ++i) {
        const int decimals = places(random);
        double value = std::pow(10.0, magnitude(random)) * (i % 2 == 0 ? 1.0 : -1.0);
        if (i % 4 < 2) {  // at the middle between two decimals, or a few bits beside it
            value = (steps(random) + 0.5) / std::pow(10.0, decimals);
            for (int off = ulps(random); off != 0; off += off < 0 ? 1 : -1) {
                value = std::nextafter(value, off < 0 ? -1e9 : 1e9);
            }
        }
        ASSERT_EQ(formatDecimal(value, decimals), decimalByTheLibrary(value, decimals))
            << decimals << " decimals of " << value;
    }
}

// --- laws ------------------------------------------------------------------------------------

constexpr unsigned kSeed = 20230501;

class FormatThenParse : public testing::TestWithParam<int> {};

TEST_P(FormatThenParse, GivesTheSameLength) {
    SCOPED_TRACE("seed " + std::to_string(kSeed));
    const int denominator = GetParam();
    std::mt19937 random(kSeed);
    std::uniform_int_distribution<int> steps(-1200 * denominator, 1200 * denominator);
    for (int i = 0; i < 5000; ++i) {
        const Inches length = Inches::of(static_cast<double>(steps(random)) / denominator);
        for (const std::string& text : {formatInches(length, Rounding::nearest, denominator),
                                        formatInchMark(length, Rounding::up, denominator)}) {
            const auto back = parseLength(text, LengthUnit::millimetre);
            ASSERT_TRUE(back.has_value()) << text;
            ASSERT_EQ(back->in(), length.in()) << text;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Denominators, FormatThenParse, testing::Values(2, 4, 8, 16, 32, 64));

TEST(FormatThenParseMetric, GivesTheSameTenth) {
    SCOPED_TRACE("seed " + std::to_string(kSeed));
    std::mt19937 random(kSeed);
    std::uniform_int_distribution<int> tenths(-300000, 300000);
    for (int i = 0; i < 5000; ++i) {
        const Inches length = Inches::fromMillimetres(tenths(random) / 10.0);
        const auto back = parseLength(formatMillimetres(length), LengthUnit::inch);
        ASSERT_TRUE(back.has_value());
        ASSERT_NEAR(back->in(), length.in(), 1e-12);
    }
}

TEST(RoundingLaw, UpIsNeverLessAndDownNeverMoreAndBothWithinOneStep) {
    SCOPED_TRACE("seed " + std::to_string(kSeed));
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> anywhere(-100.0, 100.0);
    const auto read = [](const std::string& text) { return parseLength(text)->in(); };
    for (int i = 0; i < 5000; ++i) {
        const double x = anywhere(random);
        const double up = read(formatInches(Inches::of(x), Rounding::up));
        const double down = read(formatInches(Inches::of(x), Rounding::down));
        const double nearest = read(formatInches(Inches::of(x), Rounding::nearest));
        ASSERT_GE(up, x - 1e-6);
        ASSERT_LE(down, x + 1e-6);
        ASSERT_LE(up - down, 1.0 / 16);
        ASSERT_LE(std::abs(nearest - x), 1.0 / 32);
    }
}

TEST(Units, ConversionsAreExactByDefinition) {
    EXPECT_EQ(Inches::of(1.0).mm(), 25.4);
    EXPECT_EQ(Inches::fromFeet(2.5).in(), 30.0);
    EXPECT_DOUBLE_EQ(Radians::fromDegrees(180.0).rad(), 3.14159265358979323846);
    EXPECT_DOUBLE_EQ(Radians::fromDegrees(90.0).degrees(), 90.0);
    EXPECT_DOUBLE_EQ(SquareInches::ofCircle(Inches::of(2.0)).in2(), 3.14159265358979323846);
    EXPECT_EQ((Inches::of(6.0) * Inches::of(8.0)).in2(), 48.0);
}

}  // namespace
}  // namespace gw::units

#include "base/result.h"

#include <gtest/gtest.h>

namespace gw {
namespace {

struct Row {
    const char* name;
    Error error;
    const char* line;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.line;
}

std::string caseName(const testing::TestParamInfo<Row>& row) {
    return row.param.name;
}

class ToLine : public testing::TestWithParam<Row> {};

TEST_P(ToLine, LeavesOutWhatIsNotKnown) {
    EXPECT_EQ(toLine(GetParam().error), GetParam().line);
}

Error error(std::string sentence,
            std::string file,
            std::string place,
            std::string expected,
            std::string found) {
    return {ErrorCode::syntax,
            std::move(sentence),
            std::move(file),
            std::move(place),
            std::move(expected),
            std::move(found)};
}

// clang-format off
const Row kRows[] = {
    {"SentenceOnly",  error("no size", "", "", "", ""),              "no size"},
    {"File",          error("no size", "a.json", "", "", ""),        "a.json: no size"},
    {"FileAndPlace",  error("no size", "a.json", "/x/1", "", ""),    "a.json: /x/1: no size"},
    {"PlaceOnly",     error("no size", "", "/x/1", "", ""),          "/x/1: no size"},
    {"Expected",      error("no size", "", "", "6 or 4", ""),        "no size (expected 6 or 4)"},
    {"Found",         error("no size", "", "", "", "7"),             "no size (found 7)"},
    {"Everything",    error("no size", "a.json", "/x", "6", "7"),    "a.json: /x: no size (expected 6, found 7)"},
    {"ControlBytes",  error("a\nb\tc", "x\x7F", "", "", "\x01" "d"), "x\\x7F: a\\x0Ab\\x09c (found \\x01d)"},
    {"Utf8IsKept",    error("½ in", "", "", "", ""),                 "½ in"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, ToLine, testing::ValuesIn(kRows), caseName);

}  // namespace
}  // namespace gw

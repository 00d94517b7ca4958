#include "base/json_reader.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <set>

#include "base/contract.h"
#include "base/id.h"

namespace gw {

using Json = nlohmann::ordered_json;

struct JsonDocument::Content {
    std::string fileName;
    Json tree;
    std::optional<Error> problem;
};

namespace {

constexpr std::size_t kShownCharacters = 40;

bool startsCharacter(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), startsCharacter));
}

/// C0 and C1 controls and DEL, in text that is known to be UTF-8.
bool hasControl(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const bool c1 =
            byte == 0xC2U && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0U;
        if (byte < 0x20U || byte == 0x7FU || c1) {
            return true;
        }
    }
    return false;
}

std::string shortened(std::string_view text) {
    if (characters(text) <= kShownCharacters) {
        return std::string(text);
    }
    std::size_t end = 0;
    for (std::size_t count = 0; end < text.size(); ++end) {
        if (startsCharacter(text[end]) && ++count == kShownCharacters) {
            break;
        }
    }
    return std::string(text.substr(0, end)) + "…";
}

/// The library is the judge: it leaves out what is not, or puts a sign in its place.
bool isUtf8(std::string_view text) {
    const Json json = std::string(text);
    return json.dump(-1, ' ', false, Json::error_handler_t::ignore) ==
           json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string inQuotes(std::string_view text) {
    return '"' + std::string(text) + '"';
}

/// A pointer's token: `~` and `/` escaped as RFC 6901 section 3 says, and never of endless length.
std::string step(std::string_view name) {
    std::string escaped = "/";
    for (const char c : shortened(name)) {
        if (c == '~') {
            escaped += "~0";
        } else if (c == '/') {
            escaped += "~1";
        } else {
            escaped += c;
        }
    }
    return escaped;
}

/// "line L, column C" of a byte; columns count characters, both from 1.
std::string lineAndColumn(std::string_view bytes, std::size_t offset) {
    const std::string_view before = bytes.substr(0, std::min(offset, bytes.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const auto lastBreak = before.rfind('\n');
    const auto lineStart = lastBreak == std::string_view::npos ? 0 : lastBreak + 1;
    const auto column = 1 + characters(before.substr(lineStart));
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

/// The part of `text` between two markers; to its end if the second is not there, empty if the
/// first is not.
std::string between(const std::string& text, std::string_view after, std::string_view before) {
    const auto start = text.find(after);
    if (start == std::string::npos) {
        return {};
    }
    const auto from = start + after.size();
    return text.substr(from, text.find(before, from) - from);
}

/// How much of what was read last the library means: its own token text also holds what stood
/// before a bracket, comma or word.
std::size_t tokenLength(std::string_view message, std::size_t lastToken) {
    struct Word {
        std::string_view said;
        std::size_t length;
    };
    const std::array<Word, 6> words = {{{"unexpected true literal", 4},
                                        {"unexpected false literal", 5},
                                        {"unexpected null literal", 4},
                                        {"unexpected string literal", lastToken},
                                        {"unexpected number literal", lastToken},
                                        {"number overflow", lastToken}}};
    const auto word = std::find_if(words.begin(), words.end(), [&](const Word& candidate) {
        return message.find(candidate.said) != std::string_view::npos;
    });
    return word == words.end() ? 1 : std::max<std::size_t>(word->length, 1);
}

/// The text from `offset`, `length` bytes and what completes the last character.
std::string_view whole(std::string_view bytes, std::size_t offset, std::size_t length) {
    std::size_t end = std::min(offset + length, bytes.size());
    while (end < bytes.size() && !startsCharacter(bytes[end])) {
        ++end;
    }
    return bytes.substr(std::min(offset, bytes.size()), end - std::min(offset, end));
}

/// The error of the library's parser, whose message tells the cause after " - " and what would have
/// been accepted after "; expected ".
Error syntaxError(const std::string& message, std::string where, std::string_view found) {
    const std::string cause = between(message, " - ", ";");
    const std::string expected = between(message, "; expected ", ";");
    const bool bytes = cause.find("UTF-8") != std::string::npos || !isUtf8(found);
    return {ErrorCode::syntax,
            "not valid JSON: " + cause,
            {},
            std::move(where),
            expected.empty() ? "JSON in UTF-8" : expected,
            bytes           ? "bytes that are not UTF-8"
            : found.empty() ? "the end of the text"
                            : shortened(found)};
}

Error overflow(std::string where, std::string_view found) {
    return {ErrorCode::outOfRange,
            "the number is too large",
            {},
            std::move(where),
            "a finite number",
            shortened(found)};
}

/// The message without what was read last: that is the file's own text, which may say anything.
std::string withoutToken(std::string message, const std::string& token) {
    const std::string quote = "; last read: '" + token + "'";
    const auto at = message.find(quote);
    return at == std::string::npos ? message : message.erase(at, quote.size());
}

/// Builds the document while it checks what the grammar does not: depth, members given twice,
/// control characters. Each callback answers whether to read on.
class Builder final : public nlohmann::json_sax<Json> {
public:
    explicit Builder(std::string_view bytes) : bytes_(bytes) {}

    /// REQUIRES that reading stopped.
    Error takeError() {
        CONTRACT(error_.has_value());
        return std::move(*error_);
    }
    Json takeRoot() { return std::move(root_); }

    bool null() override { return add(nullptr); }
    bool boolean(bool value) override { return add(value); }
    bool number_integer(std::int64_t value) override { return add(value); }
    bool number_unsigned(std::uint64_t value) override { return add(value); }
    bool number_float(double value, const std::string& text) override;
    bool string(std::string& value) override;
    bool binary(Json::binary_t& value) override;
    bool start_object(std::size_t size) override;
    bool key(std::string& name) override;
    bool end_object() override { return leave(); }
    bool start_array(std::size_t size) override;
    bool end_array() override { return leave(); }
    bool parse_error(std::size_t position,
                     const std::string& lastToken,
                     const nlohmann::detail::exception& exception) override;

private:
    struct Level {
        Json* container;
        std::set<std::string> names = {};  ///< of an object, so far
        std::string name = {};             ///< of the member that comes next
    };

    bool add(Json value) {
        place(std::move(value));
        return true;
    }
    Json* place(Json value);
    bool enter(Json container);
    bool leave();
    std::string pointer() const;
    bool stop(Error error);

    std::string_view bytes_;
    Json root_;
    std::vector<Level> levels_;
    std::optional<Error> error_;
};

Json* Builder::place(Json value) {
    if (levels_.empty()) {
        root_ = std::move(value);
        return &root_;
    }
    Level& level = levels_.back();
    if (level.container->is_array()) {
        auto& array = level.container->get_ref<Json::array_t&>();
        return &array.emplace_back(std::move(value));
    }
    // As the vector it is: the map's own emplace would compare with every name before it.
    Json::object_t::Container& members = level.container->get_ref<Json::object_t&>();
    return &members.emplace_back(level.name, std::move(value)).second;
}

/// Of the value that comes next. An outer array already holds the container being read.
std::string Builder::pointer() const {
    std::string text;
    for (const Level& level : levels_) {
        const std::size_t held = &level == &levels_.back() ? 0 : 1;
        text += level.container->is_array() ? '/' + std::to_string(level.container->size() - held)
                                            : step(level.name);
    }
    return text;
}

bool Builder::stop(Error error) {
    error_ = std::move(error);
    return false;
}

bool Builder::enter(Json container) {
    if (levels_.size() >= static_cast<std::size_t>(JsonDocument::kMostLevels)) {
        return stop({ErrorCode::outOfRange,
                     "nested too deep",
                     {},
                     pointer(),
                     "at most " + std::to_string(JsonDocument::kMostLevels) + " levels",
                     "more"});
    }
    Level next{place(std::move(container))};
    levels_.push_back(std::move(next));
    return true;
}

bool Builder::leave() {
    levels_.pop_back();
    return true;
}

bool Builder::start_object(std::size_t /*size*/) {
    return enter(Json::object());
}

bool Builder::start_array(std::size_t /*size*/) {
    return enter(Json::array());
}

bool Builder::key(std::string& name) {
    Level& level = levels_.back();
    level.name = name;
    if (hasControl(name)) {
        level.name.clear();
        return stop({ErrorCode::syntax,
                     "a member's name has a control character",
                     {},
                     pointer(),
                     "printable characters",
                     inQuotes(shortened(name))});
    }
    if (!level.names.insert(name).second) {
        return stop({ErrorCode::duplicate,
                     "the member stands twice in one object",
                     {},
                     pointer(),
                     "each member once",
                     inQuotes(shortened(name)) + " again"});
    }
    return true;
}

bool Builder::number_float(double value, const std::string& text) {
    if (!std::isfinite(value)) {
        return stop({ErrorCode::outOfRange,
                     "the number is too large",
                     {},
                     pointer(),
                     "a finite number",
                     shortened(text)});
    }
    return add(value);
}

bool Builder::string(std::string& value) {
    if (hasControl(value)) {
        return stop({ErrorCode::syntax,
                     "the text has a control character",
                     {},
                     pointer(),
                     "printable characters",
                     inQuotes(shortened(value))});
    }
    return add(std::move(value));
}

bool Builder::binary(Json::binary_t& /*value*/) {
    CONTRACT(false);  // JSON text has no binary values
}

bool Builder::parse_error(std::size_t position,
                          const std::string& lastToken,
                          const nlohmann::detail::exception& exception) {
    const std::string message = withoutToken(exception.what(), lastToken);
    const std::size_t length = tokenLength(message, lastToken.size());
    const std::size_t offset = position >= length ? position - length : 0;
    const auto where = lineAndColumn(bytes_, offset);
    const auto found = whole(bytes_, offset, length);
    return stop(message.find("number overflow") == std::string::npos
                    ? syntaxError(message, where, found)
                    : overflow(where, found));
}

std::string typeName(const Json& node) {
    switch (node.type()) {
        case Json::value_t::null:
            return "null";
        case Json::value_t::object:
            return "an object";
        case Json::value_t::array:
            return "an array";
        case Json::value_t::string:
            return "a text";
        case Json::value_t::boolean:
            return "true or false";
        case Json::value_t::number_integer:
        case Json::value_t::number_unsigned:
        case Json::value_t::number_float:
            return "a number";
        case Json::value_t::binary:
        case Json::value_t::discarded:
            return "something else";
    }
    return "something else";
}

const Json* jsonOf(const void* node) {
    return static_cast<const Json*>(node);
}

std::optional<Error> unusableBytes(std::string_view bytes) {
    if (bytes.size() > JsonDocument::kMostBytes) {
        return Error{ErrorCode::outOfRange,
                     "the file is too large",
                     {},
                     {},
                     "at most " + std::to_string(JsonDocument::kMostBytes) + " bytes",
                     std::to_string(bytes.size()) + " bytes"};
    }
    const auto isBlank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    if (std::all_of(bytes.begin(), bytes.end(), isBlank)) {
        return Error{ErrorCode::syntax, "the file is empty", {}, {}, "a JSON object", "nothing"};
    }
    if (bytes.substr(0, 2) == "\xFF\xFE" || bytes.substr(0, 2) == "\xFE\xFF") {
        return Error{ErrorCode::syntax, "the file is not UTF-8", {}, {}, "UTF-8", "UTF-16"};
    }
    // The library takes it for the end of the text, whatever follows.
    if (const auto nul = bytes.find('\0'); nul != std::string_view::npos) {
        return Error{ErrorCode::syntax,
                     "not valid JSON: a NUL byte",
                     {},
                     lineAndColumn(bytes, nul),
                     "JSON in UTF-8",
                     "a byte 0"};
    }
    return std::nullopt;
}

/// As people write it: no point in a whole number.
std::string number(double value) {
    std::string text = Json(value).dump();
    if (text.ends_with(".0")) {
        text.resize(text.size() - 2);
    }
    return text;
}

}  // namespace

Result<JsonDocument> JsonDocument::parse(std::string_view bytes, const std::string& fileName) {
    const auto refuse = [&](Error error) {
        error.file = fileName;
        return fail(std::move(error));
    };
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (bytes.starts_with(kByteOrderMark)) {
        bytes.remove_prefix(kByteOrderMark.size());
    }
    if (auto error = unusableBytes(bytes)) {
        return refuse(std::move(*error));
    }
    Builder builder(bytes);
    if (!Json::sax_parse(bytes, &builder)) {
        return refuse(builder.takeError());
    }
    return JsonDocument(
        std::make_shared<Content>(Content{fileName, builder.takeRoot(), std::nullopt}));
}

JsonValue JsonDocument::root() const {
    return {content_.get(), &content_->tree, ""};
}

const std::optional<Error>& JsonDocument::problem() const {
    return content_->problem;
}

void JsonValue::complain(ErrorCode code,
                         const std::string& sentence,
                         const std::string& expected,
                         const std::string& found) const {
    if (!content_->problem) {
        content_->problem = Error{
            code, sentence, content_->fileName, pointer_.empty() ? "/" : pointer_, expected, found};
    }
}

std::string JsonValue::excerpt() const {
    if (node_ == nullptr) {
        return "nothing";
    }
    const Json& node = *jsonOf(node_);
    return node.is_structured() ? typeName(node) : shortened(node.dump());
}

JsonObject JsonValue::object() const {
    if (content_->problem) {
        return JsonObject(std::make_shared<JsonValue>(JsonValue(content_, nullptr, pointer_)));
    }
    if (node_ != nullptr && !jsonOf(node_)->is_object()) {
        complain(ErrorCode::syntax, "the wrong kind of value", "an object", excerpt());
        return JsonObject(std::make_shared<JsonValue>(JsonValue(content_, nullptr, pointer_)));
    }
    return JsonObject(std::make_shared<JsonValue>(*this));
}

bool JsonValue::isObject() const {
    return node_ != nullptr && jsonOf(node_)->is_object();
}
bool JsonValue::isText() const {
    return node_ != nullptr && jsonOf(node_)->is_string();
}

std::vector<JsonValue> JsonValue::items() const {
    std::vector<JsonValue> values;
    if (node_ == nullptr || content_->problem) {
        return values;
    }
    if (!jsonOf(node_)->is_array()) {
        complain(ErrorCode::syntax, "the wrong kind of value", "an array", excerpt());
        return values;
    }
    if (jsonOf(node_)->size() > JsonDocument::kMostItems) {
        complain(ErrorCode::outOfRange,
                 "the list is too long",
                 "at most " + std::to_string(JsonDocument::kMostItems) + " items",
                 std::to_string(jsonOf(node_)->size()));
        return values;
    }
    for (const auto& item : *jsonOf(node_)) {
        values.push_back(
            JsonValue(content_, &item, pointer_ + "/" + std::to_string(values.size())));
    }
    return values;
}

double JsonValue::number(double least, double greatest) const {
    if (node_ == nullptr) {
        return least;
    }
    if (!jsonOf(node_)->is_number()) {
        complain(ErrorCode::syntax, "the wrong kind of value", "a number", excerpt());
        return least;
    }
    const auto value = jsonOf(node_)->get<double>();
    if (!std::isfinite(value) || value < least || value > greatest) {
        complain(ErrorCode::outOfRange,
                 "the number makes no sense here",
                 gw::number(least) + " to " + gw::number(greatest),
                 excerpt());
        return least;
    }
    return value == 0.0 ? 0.0 : value;  // no negative zero
}

int JsonValue::integer(int least, int greatest) const {
    const double value = number(least, greatest);
    if (value != std::floor(value)) {
        complain(ErrorCode::syntax, "not a whole number", "a whole number", excerpt());
        return least;
    }
    return static_cast<int>(value);
}

bool JsonValue::boolean() const {
    if (node_ == nullptr) {
        return false;
    }
    if (!jsonOf(node_)->is_boolean()) {
        complain(ErrorCode::syntax, "the wrong kind of value", "true or false", excerpt());
        return false;
    }
    return jsonOf(node_)->get<bool>();
}

std::string JsonValue::text(std::size_t most) const {
    if (node_ == nullptr) {
        return {};
    }
    if (!jsonOf(node_)->is_string()) {
        complain(ErrorCode::syntax, "the wrong kind of value", "a text", excerpt());
        return {};
    }
    const auto& value = jsonOf(node_)->get_ref<const std::string&>();
    if (value.size() > most) {
        complain(ErrorCode::outOfRange,
                 "the text is too long",
                 "at most " + std::to_string(most) + " bytes",
                 std::to_string(value.size()) + " bytes");
        return {};
    }
    return value;
}

std::string JsonValue::idText() const {
    auto value = text();
    if (!isValidId(value)) {
        complain(ErrorCode::syntax,
                 "not an id",
                 "1 to 40 letters, digits, '-', '_' or '.', first a letter or digit",
                 excerpt());
    }
    return value;
}

JsonValue JsonObject::required(std::string_view name) {
    if (auto member = optional(name)) {
        return *member;
    }
    if (value_->node_ != nullptr) {
        value_->complain(
            ErrorCode::missing, "a member is missing", '"' + std::string(name) + '"', "nothing");
    }
    return {value_->content_, nullptr, value_->pointer_ + step(name)};
}

std::optional<JsonValue> JsonObject::optional(std::string_view name) {
    asked_.emplace_back(name);
    if (value_->node_ == nullptr) {
        return std::nullopt;
    }
    const auto& node = *jsonOf(value_->node_);
    const auto found = node.find(std::string(name));
    if (found == node.end()) {
        return std::nullopt;
    }
    return JsonValue(value_->content_, &*found, value_->pointer_ + step(name));
}

std::optional<std::string> JsonObject::textIf(std::string_view name) {
    const auto value = optional(name);
    return value ? std::optional(value->text()) : std::nullopt;
}

std::optional<bool> JsonObject::flagIf(std::string_view name) {
    const auto value = optional(name);
    return value ? std::optional(value->boolean()) : std::nullopt;
}

std::optional<double> JsonObject::numberIf(std::string_view name, double least, double greatest) {
    const auto value = optional(name);
    return value ? std::optional(value->number(least, greatest)) : std::nullopt;
}

std::optional<int> JsonObject::integerIf(std::string_view name, int least, int greatest) {
    const auto value = optional(name);
    return value ? std::optional(value->integer(least, greatest)) : std::nullopt;
}

std::vector<JsonValue> JsonObject::itemsIf(std::string_view name) {
    const auto value = optional(name);
    return value ? value->items() : std::vector<JsonValue>();
}

void JsonObject::done() const {
    if (value_->node_ == nullptr) {
        return;
    }
    for (const auto& member : jsonOf(value_->node_)->items()) {
        if (std::find(asked_.begin(), asked_.end(), member.key()) != asked_.end()) {
            continue;
        }
        std::string known;
        for (const auto& name : asked_) {
            known += (known.empty() ? "" : ", ") + name;
        }
        JsonValue(value_->content_, &member.value(), value_->pointer_ + step(member.key()))
            .complain(ErrorCode::unknown, "a member we do not know", known, inQuotes(member.key()));
        return;
    }
}

void readFormat(JsonObject& object, std::string_view format, int version, const std::string& kind) {
    constexpr int kAnyVersion = 1'000'000;
    const auto stated = object.required("format");
    if (stated.text() != format) {
        stated.complain(ErrorCode::unknown, "not " + kind, inQuotes(format), stated.excerpt());
    }
    const auto number = object.required("version");
    if (const int of = number.integer(1, kAnyVersion); of > version) {
        number.complain(ErrorCode::unknown,
                        "the file was written by a later version of the program",
                        "version " + std::to_string(version),
                        "version " + std::to_string(of));
    }
}

}  // namespace gw

#include "base/json_reader.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "base/contract.h"

namespace gw {

using Json = nlohmann::ordered_json;

struct JsonDocument::Content {
    std::string fileName;
    Json tree;
    std::optional<Error> problem;
};

namespace {

/// What the callback throws to stop the parser; never leaves this file.
struct Refused {
    Error error;
};

std::string placeAt(std::string_view bytes, std::size_t offset) {
    const auto before = bytes.substr(0, std::min(offset, bytes.size()));
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const auto lineStart = before.rfind('\n');
    const auto column =
        lineStart == std::string_view::npos ? before.size() + 1 : before.size() - lineStart;
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

/// The bytes around a place, printable, for "found".
std::string nearby(std::string_view bytes, std::size_t offset) {
    constexpr std::size_t kLongest = 24;
    if (offset >= bytes.size()) {
        return "the end of the file";
    }
    std::string text(bytes.substr(offset, kLongest));
    const auto end = text.find('\n');
    text = text.substr(0, end);
    // What cannot be shown as text is shown as bytes by toLine; high bytes are not valid alone.
    std::replace_if(
        text.begin(),
        text.end(),
        [](char c) { return (static_cast<unsigned char>(c) & 0x80U) != 0; },
        '?');
    return text.empty() ? "the end of the line" : "'" + text + "'";
}

/// Watches depth and duplicate members while the library parses.
class Watch {
public:
    bool operator()(int depth, Json::parse_event_t event, Json& parsed) {
        switch (event) {
            case Json::parse_event_t::object_start:
                refuseDepth(depth);
                members_.emplace_back();
                break;
            case Json::parse_event_t::array_start:
                refuseDepth(depth);
                break;
            case Json::parse_event_t::object_end:
                members_.pop_back();
                break;
            case Json::parse_event_t::key:
                noteMember(parsed.get<std::string>());
                break;
            case Json::parse_event_t::array_end:
            case Json::parse_event_t::value:
                break;
        }
        return true;
    }

private:
    static void refuseDepth(int depth) {
        if (depth >= JsonDocument::kMostLevels) {
            throw Refused{{ErrorCode::outOfRange,
                           "nested too deep",
                           {},
                           {},
                           "at most " + std::to_string(JsonDocument::kMostLevels) + " levels",
                           "more"}};
        }
    }

    void noteMember(const std::string& name) {
        if (!members_.back().insert(name).second) {
            throw Refused{{ErrorCode::duplicate,
                           "a member stands twice in one object",
                           {},
                           {},
                           "each member once",
                           '"' + name.substr(0, 40) + '"'}};
        }
    }

    std::vector<std::set<std::string>> members_;
};

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

/// A member name as a JSON pointer step (RFC 6901).
std::string step(std::string_view name) {
    std::string escaped = "/";
    for (const char c : name) {
        escaped += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
    }
    return escaped;
}

std::optional<Error> unusableBytes(std::string_view bytes) {
    if (bytes.size() > JsonDocument::kMostBytes) {
        return Error{ErrorCode::outOfRange,
                     "the file is too large",
                     {},
                     {},
                     "at most " + std::to_string(JsonDocument::kMostBytes / 1'000'000) + " MB",
                     std::to_string(bytes.size() / 1'000'000) + " MB"};
    }
    const auto isBlank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    if (std::all_of(bytes.begin(), bytes.end(), isBlank)) {
        return Error{ErrorCode::syntax, "the file is empty", {}, {}, "a JSON object", "nothing"};
    }
    if (bytes.substr(0, 2) == "\xFF\xFE" || bytes.substr(0, 2) == "\xFE\xFF") {
        return Error{ErrorCode::syntax, "the file is not UTF-8", {}, {}, "UTF-8", "UTF-16"};
    }
    return std::nullopt;
}

std::string number(double value) {
    return Json(value).dump();
}

}  // namespace

Result<JsonDocument> JsonDocument::parse(std::string_view bytes, const std::string& fileName) {
    const auto refuse = [&](Error error) {
        error.file = fileName;
        return fail(std::move(error));
    };
    if (auto error = unusableBytes(bytes)) {
        return refuse(std::move(*error));
    }
    auto content = std::make_shared<Content>();
    content->fileName = fileName;
    try {
        content->tree = Json::parse(bytes, Watch{});
    } catch (const Json::parse_error& error) {
        // The library counts the byte after which it stopped, from 1.
        const std::size_t offset = error.byte > 0 ? error.byte - 1 : 0;
        return refuse({ErrorCode::syntax,
                       "this is not JSON",
                       {},
                       placeAt(bytes, offset),
                       "JSON in UTF-8",
                       nearby(bytes, offset)});
    } catch (const Json::out_of_range&) {
        return refuse({ErrorCode::outOfRange,
                       "a number is beyond what can be held",
                       {},
                       {},
                       "at most 1.8e308",
                       "a larger one"});
    } catch (const Refused& refused) {
        return refuse(refused.error);
    }
    return JsonDocument(std::move(content));
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
    constexpr std::size_t kLongest = 40;
    if (node_ == nullptr) {
        return "nothing";
    }
    const Json& node = *jsonOf(node_);
    if (node.is_structured()) {
        return typeName(node);
    }
    const auto text = node.dump();
    return text.size() <= kLongest ? text : text.substr(0, kLongest) + "…";
}

JsonObject JsonValue::object() const {
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
    if (node_ == nullptr) {
        return values;
    }
    if (!jsonOf(node_)->is_array()) {
        complain(ErrorCode::syntax, "the wrong kind of value", "an array", excerpt());
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
    const auto isControl = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
    if (std::any_of(value.begin(), value.end(), isControl)) {
        complain(ErrorCode::syntax, "a control character in the text", "printable text", excerpt());
        return {};
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
            .complain(
                ErrorCode::unknown, "a member we do not know", known, '"' + member.key() + '"');
        return;
    }
}

}  // namespace gw

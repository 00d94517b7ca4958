#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

/// Strict reading of JSON: what stands in a file is used as it stands or refused with its place.
///
/// Reading code asks for what it wants in order. The first problem is kept by the document and
/// every later answer is harmless (0, "", nothing), so readers need no error handling of their own
/// until they ask finish().
namespace gw {

class JsonValue;

/// A parsed file. Limits: 16 MB, 64 levels deep, UTF-8 (a byte order mark is skipped); no duplicate
/// members, no control characters in names or texts, no NaN or Infinity, no number beyond double.
/// After the first problem, objects have no members and arrays no items: a file with a million
/// faults takes no longer than one with one.
class JsonDocument {
public:
    static constexpr std::size_t kMostBytes = 16'000'000;
    static constexpr int kMostLevels = 64;
    static constexpr std::size_t kMostItems = 20'000;  ///< of one array that is read

    /// The place of an error is "line L, column C" (columns in characters) where the text is not
    /// JSON or a number too large, else the JSON pointer of what breaks a limit. Time and memory
    /// grow with the size of the text whatever stands in it.
    static Result<JsonDocument> parse(std::string_view bytes, const std::string& fileName);

    JsonValue root() const;

    /// The first problem that reading met, if any.
    const std::optional<Error>& problem() const;

    /// `value`, or the first problem.
    template <class T>
    Result<T> finish(T value) const {
        if (problem()) {
            return fail(*problem());
        }
        return value;
    }

    struct Content;

private:
    explicit JsonDocument(std::shared_ptr<Content> content) : content_(std::move(content)) {}
    std::shared_ptr<Content> content_;
};

/// An object being read: asks for members by name; done() refuses those nobody asked for.
class JsonObject {
public:
    JsonValue required(std::string_view name);
    std::optional<JsonValue> optional(std::string_view name);

    // Members that may be left out: nothing where they are. Bounds and kinds as in JsonValue.
    std::optional<std::string> textIf(std::string_view name);
    std::optional<bool> flagIf(std::string_view name);
    std::optional<double> numberIf(std::string_view name, double least, double greatest);
    std::optional<int> integerIf(std::string_view name, int least, int greatest);
    std::vector<JsonValue> itemsIf(std::string_view name);
    template <class Read>
    auto oneIf(std::string_view name, Read read, const std::string& expected)
        -> decltype(read(std::string_view()));

    /// Records error `unknown` for the first member that was not asked for.
    void done() const;

private:
    friend class JsonValue;
    explicit JsonObject(std::shared_ptr<JsonValue> value) : value_(std::move(value)) {}
    std::shared_ptr<JsonValue> value_;
    std::vector<std::string> asked_;
};

/// One value with its place (a JSON pointer). Cheap to copy; valid as long as its document.
class JsonValue {
public:
    /// REQUIRES nothing: a value that is not an object is a recorded error and an empty object.
    JsonObject object() const;
    std::vector<JsonValue> items() const;                ///< of an array; at most kMostItems
    double number(double least, double greatest) const;  ///< finite, within bounds
    int integer(int least, int greatest) const;          ///< a whole number within bounds
    bool boolean() const;
    /// At most `most` bytes, no control characters.
    std::string text(std::size_t most = 400) const;

    bool isObject() const;
    bool isText() const;

    /// One of a kind's texts. `read` gives std::optional<T>; `expected` names what it accepts.
    template <class Read>
    auto one(Read read, const std::string& expected) const {
        const std::string word = text();
        const auto found = read(std::string_view(word));
        if (!found) {
            complain(ErrorCode::unknown, "not a known value", expected, excerpt());
        }
        return found;
    }

    /// The same; `other` where it is none of them, which is recorded.
    template <class T, class Read>
    T oneOr(Read read, const std::string& expected, T other) const {
        return one(read, expected).value_or(other);
    }

    /// A text that isValidId accepts; anything else is recorded.
    std::string idText() const;

    const std::string& pointer() const { return pointer_; }
    /// Records a problem at this place unless one was recorded before.
    void complain(ErrorCode code,
                  const std::string& sentence,
                  const std::string& expected = {},
                  const std::string& found = {}) const;
    /// The value as it stands, cut to about 40 characters, for error messages.
    std::string excerpt() const;

private:
    friend class JsonDocument;
    friend class JsonObject;
    JsonValue(JsonDocument::Content* content, const void* node, std::string pointer)
        : content_(content), node_(node), pointer_(std::move(pointer)) {}
    JsonDocument::Content* content_;
    const void* node_;  ///< null: something that was missing; already complained of
    std::string pointer_;
};

template <class Read>
auto JsonObject::oneIf(std::string_view name, Read read, const std::string& expected)
    -> decltype(read(std::string_view())) {
    const auto value = optional(name);
    return value ? value->one(read, expected) : std::nullopt;
}

/// The members every file of ours begins with: "format", which must be `format` (`kind` says it in
/// words: "a layout file"), and "version", a whole number from 1 that must not be later than
/// `version`.
void readFormat(JsonObject& object, std::string_view format, int version, const std::string& kind);

}  // namespace gw

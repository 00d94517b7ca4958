#pragma once

#include <memory>
#include <string>
#include <string_view>

/// Values to be written as JSON. Members keep the order in which they were set.
namespace gw {

class JsonTree {
public:
    static JsonTree object();
    static JsonTree array();
    JsonTree(double value);              // NOLINT(google-explicit-constructor): set("x", 1.5)
    JsonTree(int value);                 // NOLINT(google-explicit-constructor)
    JsonTree(bool value);                // NOLINT(google-explicit-constructor)
    JsonTree(std::string_view value);    // NOLINT(google-explicit-constructor)
    JsonTree(const std::string& value);  // NOLINT(google-explicit-constructor)
    JsonTree(const char* value);         // NOLINT(google-explicit-constructor)

    JsonTree(const JsonTree& other);
    JsonTree(JsonTree&& other) noexcept;
    JsonTree& operator=(JsonTree other) noexcept;
    ~JsonTree();

    /// Appends a member. CONTRACT: this is an object without it.
    JsonTree& set(std::string_view name, JsonTree value);
    /// Appends an item. CONTRACT: this is an array.
    JsonTree& push(JsonTree value);
    bool empty() const;

    /// Two blanks a level, a final newline; numbers in the shortest form that reads back to the
    /// same double. CONTRACT: no NaN or infinity inside, texts are UTF-8.
    std::string text() const;

private:
    struct Node;
    explicit JsonTree(std::unique_ptr<Node> node);
    std::unique_ptr<Node> node_;
};

}  // namespace gw

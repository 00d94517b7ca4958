#include "base/json_writer.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/contract.h"

namespace gw {

using Json = nlohmann::ordered_json;

struct JsonTree::Node {
    Json json;
};

namespace {

/// A whole number is written without a point, as people type it.
Json numberOf(double value) {
    constexpr double kExact = 1e15;
    CONTRACT(std::isfinite(value));
    if (value == std::floor(value) && std::abs(value) < kExact) {
        return static_cast<std::int64_t>(value);
    }
    return value;
}

}  // namespace

JsonTree::JsonTree(std::unique_ptr<Node> node) : node_(std::move(node)) {}
JsonTree JsonTree::object() {
    return JsonTree(std::make_unique<Node>(Node{Json::object()}));
}
JsonTree JsonTree::array() {
    return JsonTree(std::make_unique<Node>(Node{Json::array()}));
}
JsonTree::JsonTree(double value) : node_(std::make_unique<Node>(Node{numberOf(value)})) {}
JsonTree::JsonTree(int value) : node_(std::make_unique<Node>(Node{Json(value)})) {}
JsonTree::JsonTree(bool value) : node_(std::make_unique<Node>(Node{Json(value)})) {}
JsonTree::JsonTree(std::string_view value)
    : node_(std::make_unique<Node>(Node{Json(std::string(value))})) {}
JsonTree::JsonTree(const std::string& value) : JsonTree(std::string_view(value)) {}
JsonTree::JsonTree(const char* value) : JsonTree(std::string_view(value)) {}
JsonTree::JsonTree(const JsonTree& other) : node_(std::make_unique<Node>(*other.node_)) {}
JsonTree::JsonTree(JsonTree&& other) noexcept = default;
JsonTree& JsonTree::operator=(JsonTree other) noexcept {
    std::swap(node_, other.node_);
    return *this;
}
JsonTree::~JsonTree() = default;

JsonTree& JsonTree::set(std::string_view name, JsonTree value) {
    CONTRACT(node_->json.is_object());
    CONTRACT(!node_->json.contains(std::string(name)));
    node_->json[std::string(name)] = std::move(value.node_->json);
    return *this;
}

JsonTree& JsonTree::push(JsonTree value) {
    CONTRACT(node_->json.is_array());
    node_->json.push_back(std::move(value.node_->json));
    return *this;
}

bool JsonTree::empty() const {
    return node_->json.empty();
}

std::string JsonTree::text() const {
    return node_->json.dump(2) + "\n";
}

}  // namespace gw

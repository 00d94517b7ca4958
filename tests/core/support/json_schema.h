#pragma once

#include <memory>
#include <nlohmann/json.hpp>
#include <string>

namespace gw::test {

/// One of the published schemas in resources/schema, as a general JSON Schema library reads it.
class JsonSchema {
public:
    /// `name`: "layout", "parts", "report" or "takeoff".
    explicit JsonSchema(const std::string& name);

    const nlohmann::json& text() const { return text_; }
    bool accepts(const nlohmann::json& document) const { return complaint(document).empty(); }
    /// Place and reason of the first violations; empty where there are none.
    std::string complaint(const nlohmann::json& document) const;

private:
    struct Parsed;
    nlohmann::json text_;
    std::shared_ptr<const Parsed> parsed_;
};

}  // namespace gw::test

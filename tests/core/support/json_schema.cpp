#include "core/support/json_schema.h"

#include <filesystem>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include "base/read_file.h"

namespace gw::test {

using valijson::adapters::NlohmannJsonAdapter;

struct JsonSchema::Parsed {
    valijson::Schema schema;
};

JsonSchema::JsonSchema(const std::string& name) {
    const auto path =
        std::filesystem::path(GW_SOURCE_DIR) / "resources/schema" / (name + ".schema.json");
    text_ = nlohmann::json::parse(readFile(path.string()).value());
    const auto parsed = std::make_shared<Parsed>();
    valijson::SchemaParser(valijson::SchemaParser::kDraft7)
        .populateSchema(NlohmannJsonAdapter(text_), parsed->schema);
    parsed_ = parsed;
}

std::string JsonSchema::complaint(const nlohmann::json& document) const {
    valijson::ValidationResults results;
    valijson::Validator().validate(parsed_->schema, NlohmannJsonAdapter(document), &results);
    std::string all;
    for (valijson::ValidationResults::Error error; results.popError(error);) {
        for (const auto& step : error.context) {
            all += step;
        }
        all += ": " + error.description + "\n";
    }
    return all;
}

}  // namespace gw::test

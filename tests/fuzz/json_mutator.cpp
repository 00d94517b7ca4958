#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <vector>

/// Mutations that keep JSON what it is, so that the fuzzer gets past the syntax: one value is
/// changed, copied over another, taken away, or doubled. Every fourth time, and where the bytes are
/// not JSON, the library's own byte mutations.
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace gw::fuzz {
namespace {

using Json = nlohmann::ordered_json;
using Random = std::minstd_rand;

std::size_t below(Random& random, std::size_t count) {
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(random);
}

void collect(Json& node, std::vector<Json*>& nodes) {
    nodes.push_back(&node);
    if (node.is_structured()) {
        for (auto& child : node) {
            collect(child, nodes);
        }
    }
}

double changed(double value, Random& random) {
    static constexpr std::array kSpecial = {
        0.0, -0.0, 1.0, -1.0, 0.5, 1e-9, 1e-7, 1e-300, 1e9, 1e17, 1e308, 1200.0, 600.0};
    switch (below(random, 6)) {
        case 0:
            return kSpecial.at(below(random, kSpecial.size()));
        case 1:
            return -value;
        case 2:
            return value * 2.0;
        case 3:
            return value + 1e-7;
        case 4:
            return std::uniform_real_distribution<double>(-5.0, 50.0)(random);
        default:
            return static_cast<double>(below(random, 50));
    }
}

void changeValue(Json& node, Random& random) {
    if (node.is_number_integer() && below(random, 2) == 0) {
        node = below(random, 12);
    } else if (node.is_number()) {
        node = changed(node.get<double>(), random);
    } else if (node.is_boolean()) {
        node = !node.get<bool>();
    } else if (node.is_array() && !node.empty()) {
        node.push_back(Json(node.at(below(random, node.size()))));
    } else if (node.is_string()) {
        node = node.get<std::string>() + "1";
    }
}

void removeChild(Json& node, Random& random) {
    if (node.is_array() && !node.empty()) {
        node.erase(below(random, node.size()));
    } else if (node.is_object() && !node.empty()) {
        auto child = node.begin();
        std::advance(child, static_cast<std::ptrdiff_t>(below(random, node.size())));
        node.erase(child);
    }
}

/// A value of the same type from elsewhere in the document.
void borrow(Json& node, const std::vector<Json*>& nodes, Random& random) {
    for (int attempt = 0; attempt < 20; ++attempt) {
        const Json& other = *nodes[below(random, nodes.size())];
        if (other.type() == node.type()) {
            node = Json(other);
            return;
        }
    }
}

void mutate(Json& document, Random& random) {
    std::vector<Json*> nodes;
    collect(document, nodes);
    Json& node = *nodes[below(random, nodes.size())];
    switch (below(random, 4)) {
        case 0:
            removeChild(node, random);
            break;
        case 1:
            borrow(node, nodes, random);
            break;
        default:
            changeValue(node, random);
            break;
    }
}

/// The bytes after a mutation; empty if these bytes or the outcome are not to be had as JSON.
std::string mutated(const std::string& bytes, Random& random) {
    // What is nested deeper is left out: the walk below would run out of stack.
    const auto shallow = [](int depth, Json::parse_event_t, Json&) { return depth < 100; };
    auto document = Json::parse(bytes, shallow, false);
    if (document.is_discarded()) {
        return {};
    }
    const auto times = 1 + below(random, 3);
    for (std::size_t i = 0; i < times; ++i) {
        mutate(document, random);
    }
    return document.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace
}  // namespace gw::fuzz

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data,
                                               std::size_t size,
                                               std::size_t most,
                                               unsigned int seed) {
    gw::fuzz::Random random(seed);
    if (gw::fuzz::below(random, 4) == 0) {
        return LLVMFuzzerMutate(data, size, most);
    }
    const auto text =
        gw::fuzz::mutated(std::string(reinterpret_cast<const char*>(data), size), random);
    if (text.empty() || text.size() > most) {
        return LLVMFuzzerMutate(data, size, most);
    }
    std::memcpy(data, text.data(), text.size());
    return text.size();
}

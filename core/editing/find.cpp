#include "editing/find.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <initializer_list>

namespace gw::editing {
namespace {

std::string small(std::string_view text) {
    std::string lower(text);
    for (char& c : lower) {
        c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return lower;
}

/// 0 whole, 1 begins with it, 2 has it in it, 3 not at all.
constexpr std::size_t kNotAtAll = 3;

class Finder {
public:
    explicit Finder(std::string wanted) : wanted_(std::move(wanted)) {}

    /// names: told apart by whole and beginning; more: only looked into.
    void look(const Item& item,
              std::initializer_list<std::string_view> names,
              std::initializer_list<std::string_view> more) {
        std::size_t rank = kNotAtAll;
        for (const auto name : names) {
            const std::string text = small(name);
            const std::size_t at = text.find(wanted_);
            if (at != std::string::npos) {
                rank = std::min<std::size_t>(rank,
                                             text.size() == wanted_.size() ? 0
                                             : at == 0                     ? 1
                                                                           : 2);
            }
        }
        for (const auto text : more) {
            if (small(text).find(wanted_) != std::string::npos) {
                rank = std::min<std::size_t>(rank, kNotAtAll - 1);
            }
        }
        if (rank < kNotAtAll) {
            found_.at(rank).push_back(item);
        }
    }

    Items found() const {
        Items all;
        for (const Items& some : found_) {
            all.insert(all.end(), some.begin(), some.end());
        }
        return all;
    }

private:
    std::string wanted_;
    std::array<Items, kNotAtAll> found_;
};

}  // namespace

Items findItems(const layout::Layout& layout, std::string_view text) {
    if (text.empty()) {
        return {};
    }
    Finder finder(small(text));
    for (const auto& one : layout.entries) {
        finder.look(one.id, {one.id.text(), one.name}, {one.leadsTo});
    }
    for (const auto& one : layout.blocks) {
        finder.look(one.id, {one.id.text(), one.name}, {one.part.text()});
    }
    for (const auto& one : layout.conductors) {
        finder.look(one.id, {one.id.text(), one.tag}, {one.colour ? *one.colour : std::string()});
    }
    for (const auto& one : layout.circuits) {
        finder.look(
            one.id, {one.id.text(), one.name}, {one.supplies ? *one.supplies : std::string()});
    }
    return finder.found();
}

}  // namespace gw::editing

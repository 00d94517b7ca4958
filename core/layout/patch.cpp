#include "layout/patch.h"

#include <algorithm>
#include <iterator>
#include <tuple>

#include "base/contract.h"

namespace gw::layout {
namespace {

template <class T>
Splice<T> spliceOf(const std::vector<T>& before, const std::vector<T>& after) {
    const auto [left, right] =
        std::mismatch(before.begin(), before.end(), after.begin(), after.end());
    auto leftEnd = before.end();
    auto rightEnd = after.end();
    while (leftEnd != left && rightEnd != right && *std::prev(leftEnd) == *std::prev(rightEnd)) {
        --leftEnd;
        --rightEnd;
    }
    return {static_cast<std::size_t>(left - before.begin()), {left, leftEnd}, {right, rightEnd}};
}

template <class T>
void applySplice(const Splice<T>& splice, std::vector<T>& list) {
    if (splice.empty()) {
        return;
    }
    CONTRACT(splice.at + splice.before.size() <= list.size());
    const auto at = list.begin() + static_cast<std::ptrdiff_t>(splice.at);
    const std::size_t kept = std::min(splice.before.size(), splice.after.size());
    const auto middle = static_cast<std::ptrdiff_t>(kept);
    std::copy_n(splice.after.begin(), kept, at);
    if (splice.before.size() > kept) {
        list.erase(at + middle, at + static_cast<std::ptrdiff_t>(splice.before.size()));
    } else {
        list.insert(at + middle, splice.after.begin() + middle, splice.after.end());
    }
}

template <class T>
Splice<T> reversedSplice(const Splice<T>& splice) {
    return {splice.at, splice.after, splice.before};
}

/// Everything that is no list. A member added to Layout does not compile here until it is told what
/// it is: forgotten, it would be left out of every edit without a word.
template <class AnyLayout>
auto restOf(AnyLayout& layout) {
    auto& [title,
           project,
           drawnBy,
           date,
           revision,
           edition,
           displayUnit,
           gutter,
           surroundings,
           readings,
           amendments,
           systems,
           circuits,
           entries,
           blocks,
           conductors,
           remarks,
           parts] = layout;
    return std::tie(title,
                    project,
                    drawnBy,
                    date,
                    revision,
                    edition,
                    displayUnit,
                    gutter,
                    surroundings,
                    readings,
                    amendments);
}

Layout withoutItems(const Layout& layout) {
    Layout rest;
    restOf(rest) = restOf(layout);
    return rest;
}

}  // namespace

bool Patch::empty() const {
    return !rest && systems.empty() && circuits.empty() && entries.empty() && blocks.empty() &&
           conductors.empty() && remarks.empty() && parts.empty();
}

Patch Patch::reversed() const {
    Patch back;
    if (rest) {
        back.rest.emplace(rest->second, rest->first);
    }
    back.systems = reversedSplice(systems);
    back.circuits = reversedSplice(circuits);
    back.entries = reversedSplice(entries);
    back.blocks = reversedSplice(blocks);
    back.conductors = reversedSplice(conductors);
    back.remarks = reversedSplice(remarks);
    back.parts = reversedSplice(parts);
    return back;
}

Patch difference(const Layout& before, const Layout& after) {
    Patch patch;
    if (restOf(before) != restOf(after)) {
        patch.rest.emplace(withoutItems(before), withoutItems(after));
    }
    patch.systems = spliceOf(before.systems, after.systems);
    patch.circuits = spliceOf(before.circuits, after.circuits);
    patch.entries = spliceOf(before.entries, after.entries);
    patch.blocks = spliceOf(before.blocks, after.blocks);
    patch.conductors = spliceOf(before.conductors, after.conductors);
    patch.remarks = spliceOf(before.remarks, after.remarks);
    patch.parts = spliceOf(before.parts, after.parts);
    return patch;
}

void apply(const Patch& patch, Layout& layout) {
    if (patch.rest) {
        restOf(layout) = restOf(patch.rest->second);
    }
    applySplice(patch.systems, layout.systems);
    applySplice(patch.circuits, layout.circuits);
    applySplice(patch.entries, layout.entries);
    applySplice(patch.blocks, layout.blocks);
    applySplice(patch.conductors, layout.conductors);
    applySplice(patch.remarks, layout.remarks);
    applySplice(patch.parts, layout.parts);
}

}  // namespace gw::layout

#include "layout/patch.h"

#include <algorithm>
#include <iterator>

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

Layout withoutItems(const Layout& layout) {
    Layout rest;
    rest.title = layout.title;
    rest.project = layout.project;
    rest.drawnBy = layout.drawnBy;
    rest.date = layout.date;
    rest.revision = layout.revision;
    rest.edition = layout.edition;
    rest.displayUnit = layout.displayUnit;
    rest.gutter = layout.gutter;
    rest.surroundings = layout.surroundings;
    rest.readings = layout.readings;
    rest.amendments = layout.amendments;
    return rest;
}

void takeRest(const Layout& rest, Layout& layout) {
    Layout whole = rest;
    whole.systems = std::move(layout.systems);
    whole.circuits = std::move(layout.circuits);
    whole.entries = std::move(layout.entries);
    whole.blocks = std::move(layout.blocks);
    whole.conductors = std::move(layout.conductors);
    whole.remarks = std::move(layout.remarks);
    whole.parts = std::move(layout.parts);
    layout = std::move(whole);
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
    Layout restBefore = withoutItems(before);
    Layout restAfter = withoutItems(after);
    if (!(restBefore == restAfter)) {
        patch.rest.emplace(std::move(restBefore), std::move(restAfter));
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
        takeRest(patch.rest->second, layout);
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

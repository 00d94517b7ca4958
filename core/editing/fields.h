#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// The members of the gutter and of the things in it as people read and type them: what forms and
/// tables show. Texts are as the layout's display unit has them; a length is read with or without
/// unit ("3 1/2", "3.5 in", "90 mm").
namespace gw::editing {

/// The gutter with where it hangs, what the authority amended, and the title block.
struct WholeGutter {
    friend bool operator==(const WholeGutter&, const WholeGutter&) = default;
};

/// What has fields.
using Owner = std::variant<WholeGutter,
                           layout::SystemId,
                           layout::CircuitId,
                           layout::EntryId,
                           layout::BlockId,
                           layout::ConductorId>;
using Owners = std::vector<Owner>;

Owner ownerOf(const Item& item);
Owners ownersOf(const Items& items);
bool isThere(const layout::Layout& layout, const Owner& owner);
/// "the gutter", "system 208Y/120 V", else as itemName.
std::string ownerName(const layout::Layout& layout, const Owner& owner);
/// One by its name, several by number: "3 conductors".
std::string ownersName(const layout::Layout& layout, const Owners& owners);

enum class FieldKind { text, length, number, choice };

/// One member of one owner.
struct Field {
    std::string name;   ///< unique among the owner's: "size", "from strip", "bend 2 radius"
    std::string label;  ///< "Size"
    std::string group;  ///< heading it stands under: "Conductor", "First end"
    FieldKind kind = FieldKind::text;
    bool mayBeOpen = false;  ///< it may be left not stated
    std::string value;       ///< as shown; empty: not stated, or an empty text
    /// What can be chosen, in order; of `choice` only. Ask while the layout is as it was.
    std::function<std::vector<std::string>()> choices = {};
    /// Sets it in a layout that has the owner; the layout is checked afterwards. Either this or
    /// `edit`.
    std::function<Result<void>(layout::Layout&, std::string_view)> write = {};
    /// Sets it in the layout as built, for what moves other things along.
    std::function<Edit(const geometry::BuiltLayout&, std::string_view)> edit = {};
    std::string whose = {};  ///< whose it is in a step's name, where not the owner's
};

/// All fields of an owner, group by group; none where it is not there. shelf: all parts at hand.
std::vector<Field> fieldsOf(const geometry::BuiltLayout& built,
                            const parts::Shelf& shelf,
                            const Owner& owner);

/// A field that all of several owners have.
struct SharedField {
    Field field;       ///< of the first
    bool same = true;  ///< all have this value; else `field.value` is the first's
};
std::vector<SharedField> sharedFields(const geometry::BuiltLayout& built,
                                      const parts::Shelf& shelf,
                                      const Owners& owners);

/// One typed value for one owner.
struct FieldEdit {
    Owner owner;
    std::string name;
    std::string text;  ///< empty: not stated
};

/// All of them or none; conductors follow their ends. A choice is taken whatever its capitals.
/// Error as the field gives it, or as layout::validate does with the place said in words;
/// `refused`, where it is asked for, tells which edit was refused.
Edit setFields(const geometry::BuiltLayout& built,
               const parts::Shelf& shelf,
               const std::vector<FieldEdit>& edits,
               std::size_t* refused = nullptr);

/// The same text for all owners.
Edit setField(const geometry::BuiltLayout& built,
              const parts::Shelf& shelf,
              const Owners& owners,
              const std::string& name,
              const std::string& text);

/// "Set size of conductor A1 to 250 kcmil", "Leave strip of 3 conductors not stated". layout: as it
/// is after the edit, so that the text is as it is shown then; owners: not empty.
std::string fieldStepName(const geometry::BuiltLayout& before,
                          const parts::Shelf& shelf,
                          const Owners& owners,
                          const std::string& name,
                          const std::string& text);

/// An error whose place leads into the layout, with the place in words in its sentence:
/// "conductor S1-A, set: not in range".
Error inWords(const layout::Layout& layout, Error error);

// ---- where a conductor ends -----------------------------------------------------------------

/// "entry Service", "block A, port 2", "capped".
std::string endText(const layout::Layout& layout, const layout::End& end);

}  // namespace gw::editing

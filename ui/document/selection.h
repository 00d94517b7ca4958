#pragma once

#include <QObject>
#include <vector>

#include "editing/item.h"

/// What is selected, everywhere: on the board, in the lists, in the findings. No document state:
/// undo does not bring it back.
namespace gw::ui {

using editing::Item;

class Selection : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;

    const std::vector<Item>& items() const { return items_; }  ///< in the order they were chosen
    bool empty() const { return items_.empty(); }
    bool contains(const Item& item) const;

    void set(std::vector<Item> items);
    void toggle(const Item& item);
    void clear() { set({}); }
    /// Forgets what is not in the layout any more.
    void keepThoseIn(const layout::Layout& layout);

Q_SIGNALS:
    void changed();

private:
    std::vector<Item> items_;
};

}  // namespace gw::ui

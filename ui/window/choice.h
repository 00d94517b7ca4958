#pragma once

#include <QComboBox>
#include <optional>
#include <string>
#include <type_traits>

#include "panels/panel_text.h"

namespace gw::ui {

/// Choices with the index of their value, where one may be left open with "not stated" first.
class Choice : public QComboBox {
public:
    template <class Values, class Text>
    void offer(const Values& values, Text text, bool mayBeOpen) {
        if (mayBeOpen) {
            addItem(QObject::tr("not stated"), kNotStated);
        }
        int index = 0;
        for (const auto& value : values) {
            addItem(toQString(std::string(text(value))), index++);
        }
    }
    template <class Values>
    auto chosen(const Values& values) const {
        using Value = std::remove_cvref_t<decltype(*values.begin())>;
        const int index = currentData().toInt();
        return index == kNotStated ? std::optional<Value>()
                                   : std::optional<Value>(*(values.begin() + index));
    }

private:
    static constexpr int kNotStated = -1;
};

}  // namespace gw::ui

#include "tools/tool.h"

#include <utility>

#include "tools/select_tool.h"

namespace gw::ui {

ToolHolder::ToolHolder(const Bench& bench, QObject* parent) : QObject(parent), bench_(bench) {
    take(nullptr);
}

ToolHolder::~ToolHolder() {
    tool_->cancel();
}

void ToolHolder::take(std::unique_ptr<Tool> tool) {
    if (tool_) {
        tool_->cancel();
        tool_->disconnect(this);
        tool_.release()->deleteLater();  // it may be the one that asks
    }
    tool_ = tool ? std::move(tool) : std::make_unique<SelectTool>(bench_);
    connect(tool_.get(), &Tool::paintChanged, this, &ToolHolder::paintChanged);
    connect(tool_.get(), &Tool::finished, this, [this] { take(nullptr); });
    bench_.board.setHint(tool_->hint());
    Q_EMIT changed();
    Q_EMIT paintChanged();
}

void ToolHolder::cancel() {
    if (tool_->cancel()) {
        return;
    }
    if (dynamic_cast<SelectTool*>(tool_.get()) == nullptr) {
        take(nullptr);
    } else {
        bench_.selection.clear();
    }
}

}  // namespace gw::ui

#pragma once

#include <QByteArray>
#include <string>

#include "base/result.h"

namespace gw::ui {

/// Writes a whole file or leaves the old one as it was: also on a full disk, where QSaveFile alone
/// may put a cut file in its place. A link is followed, permissions are kept.
/// Error `unwritable` with the path and the system's reason. path: UTF-8.
Result<void> saveBytes(const std::string& path, const QByteArray& bytes);

}  // namespace gw::ui

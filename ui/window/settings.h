#pragma once

#include <QSettings>
#include <QStringList>
#include <memory>

namespace gw::ui {

/// What the window remembers from one run to the next. Several windows share one file: each value
/// is read when it is asked for. Damaged or strange values count as not set.
class Settings {
public:
    /// Remembers nothing where the file's name is empty.
    explicit Settings(const QString& file);

    bool remembers() const { return store_ != nullptr; }

    /// Absolute, the latest first, at most kMostRecent; also those that are missing by now.
    static constexpr int kMostRecent = 10;
    QStringList recentFiles() const;
    void addRecentFile(const QString& path);
    void forgetRecentFiles();

    /// Something said once and put away by the user.
    bool isPutAway(const QString& name) const;
    void putAway(const QString& name);

    QByteArray bytes(const QString& name) const;
    void setBytes(const QString& name, const QByteArray& bytes);

private:
    void set(const QString& name, const QVariant& value);

    std::unique_ptr<QSettings> store_;
};

}  // namespace gw::ui

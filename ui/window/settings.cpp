#include "window/settings.h"

#include <QFileInfo>

namespace gw::ui {
namespace {

const char* const kRecent = "files/recent";

QString putAwayKey(const QString& name) {
    return QStringLiteral("putAway/") + name;
}

}  // namespace

Settings::Settings(const QString& file) {
    if (!file.isEmpty()) {
        store_ = std::make_unique<QSettings>(file, QSettings::IniFormat);
    }
}

QStringList Settings::recentFiles() const {
    if (!store_) {
        return {};
    }
    store_->sync();  // another window may have written
    QStringList files = store_->value(QLatin1String(kRecent)).toStringList();
    files.removeAll(QString());
    files.removeDuplicates();
    return files.mid(0, kMostRecent);
}

void Settings::addRecentFile(const QString& path) {
    const QString full = QFileInfo(path).absoluteFilePath();
    QStringList files = recentFiles();
    files.removeAll(full);
    files.prepend(full);
    set(QLatin1String(kRecent), files.mid(0, kMostRecent));
}

void Settings::forgetRecentFiles() {
    set(QLatin1String(kRecent), QStringList());
}

bool Settings::isPutAway(const QString& name) const {
    return store_ && store_->value(putAwayKey(name)).toBool();
}

void Settings::putAway(const QString& name) {
    set(putAwayKey(name), true);
}

QByteArray Settings::bytes(const QString& name) const {
    return store_ ? store_->value(name).toByteArray() : QByteArray();
}

void Settings::setBytes(const QString& name, const QByteArray& bytes) {
    set(name, bytes);
}

void Settings::set(const QString& name, const QVariant& value) {
    if (store_) {
        store_->setValue(name, value);
        store_->sync();
    }
}

}  // namespace gw::ui

#include "document/save_bytes.h"

#include <QSaveFile>

namespace gw::ui {
namespace {

tl::unexpected<Error> cannot(const std::string& path, const QString& why) {
    return fail(
        {ErrorCode::unwritable, "the file could not be written", path, {}, {}, why.toStdString()});
}

/// An empty reason: the short write set no error, which a full disk does.
QString reasonOf(const QSaveFile& file) {
    return file.error() == QFileDevice::NoError ? QStringLiteral("the disk is full")
                                                : file.errorString();
}

}  // namespace

Result<void> saveBytes(const std::string& path, const QByteArray& bytes) {
    QSaveFile file(QString::fromStdString(path));  // writing in place stays off: it would truncate
    if (!file.open(QIODevice::WriteOnly)) {
        return cannot(path, file.errorString());
    }
    // commit() does not notice a short or unflushed write (seen with Qt 6.4): check both here.
    if (file.write(bytes) != bytes.size() || !file.flush()) {
        const auto why = reasonOf(file);
        file.cancelWriting();
        file.commit();
        return cannot(path, why);
    }
    if (!file.commit()) {
        return cannot(path, file.errorString());
    }
    return {};
}

}  // namespace gw::ui

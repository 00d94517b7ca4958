#include "app/shelf.h"

#include <QDir>
#include <QFile>

#include "base/contract.h"
#include "base/read_file.h"
#include "parts/shelf.h"

namespace gw::app {
namespace {

std::vector<parts::PartFile> shippedFiles() {
    std::vector<parts::PartFile> files;
    const QDir folder(":/parts");
    for (const auto& name : folder.entryList({"*.json"}, QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        CONTRACT(file.open(QIODevice::ReadOnly));
        files.push_back({name.toStdString(), file.readAll().toStdString()});
    }
    CONTRACT(!files.empty());
    return files;
}

}  // namespace

Result<parts::Shelf> loadShelf(const std::vector<std::string>& userFiles) {
    auto files = shippedFiles();
    for (const auto& path : userFiles) {
        auto bytes = readFile(path);
        if (!bytes) {
            return fail(bytes.error());
        }
        files.push_back({path, std::move(*bytes)});
    }
    return parts::loadShelf(files);
}

}  // namespace gw::app

#include "support/shipped_shelf.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include "base/read_file.h"
#include "parts/shelf.h"

namespace gw::test {

parts::Shelf shippedShelf() {
    namespace fs = std::filesystem;
    std::vector<fs::path> paths;
    for (const auto& entry : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "resources/parts")) {
        if (entry.path().extension() == ".json") {
            paths.push_back(entry.path());
        }
    }
    std::sort(paths.begin(), paths.end());
    std::vector<parts::PartFile> files;
    for (const auto& path : paths) {
        files.push_back({path.filename().string(), readFile(path.string()).value()});
    }
    auto shelf = parts::loadShelf(files);
    if (!shelf) {
        std::cerr << toLine(shelf.error()) << "\n";
        std::abort();
    }
    return std::move(*shelf);
}

}  // namespace gw::test

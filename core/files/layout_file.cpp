#include "files/layout_file.h"

#include "files/layout_reader.h"

namespace gw::files {

Result<layout::Layout> readLayout(std::string_view bytes,
                                  const std::string& fileName,
                                  const parts::Shelf& shelf) {
    const auto document = JsonDocument::parse(bytes, fileName);
    if (!document) {
        return fail(document.error());
    }
    auto layout = document->finish(readLayoutObject(document->root()));
    if (!layout) {
        return layout;
    }
    if (const auto valid = layout::validate(*layout, shelf); !valid) {
        Error error = valid.error();
        error.file = fileName;
        return fail(std::move(error));
    }
    return layout;
}

}  // namespace gw::files

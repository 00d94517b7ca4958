#include "parts/shelf.h"

#include "parts/part_file.h"

namespace gw::parts {

Result<Shelf> loadShelf(const std::vector<PartFile>& files) {
    Shelf shelf;
    std::map<PartId, std::string> origin;
    for (const auto& file : files) {
        auto parts = readParts(file.bytes, file.name);
        if (!parts) {
            return fail(parts.error());
        }
        for (std::size_t i = 0; i < parts->size(); ++i) {
            auto& part = (*parts)[i];
            const auto [place, added] = origin.emplace(part.id, file.name);
            if (!added) {
                return fail({ErrorCode::duplicate,
                             "two files describe a part of one id",
                             file.name,
                             "/parts/" + std::to_string(i) + "/id",
                             "an id not used in " + place->second,
                             '"' + part.id.text() + '"'});
            }
            shelf.emplace(part.id, std::move(part));
        }
    }
    return shelf;
}

}  // namespace gw::parts

#pragma once

#include <QString>
#include <memory>
#include <string>

#include "document/document.h"

/// Documents for tests that do not care what is in them.
namespace gw::test {

/// Of tests/data/layouts, with the shipped parts: "small", "least", "everything".
layout::Layout layoutNamed(const char* name);
layout::Layout smallLayout(const std::string& title = "Small");

/// With the shipped parts.
std::unique_ptr<ui::Document> documentOf(const layout::Layout& layout);

/// One step: another title.
void retitle(ui::Document& document, const std::string& title);

/// The layout file's bytes.
QByteArray bytesOf(const layout::Layout& layout);

}  // namespace gw::test

// A JSON document as text.
#pragma once

#include <string>

#include <nlohmann/json.hpp>

namespace laywright {

// Indented, ending with a line feed; bytes that are not UTF-8 are replaced.
[[nodiscard]] std::string document_text(const nlohmann::ordered_json& document);

}  // namespace laywright

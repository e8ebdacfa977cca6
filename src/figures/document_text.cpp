#include "figures/document_text.h"

namespace laywright {

std::string document_text(const nlohmann::ordered_json& document) {
  return document.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + '\n';
}

}  // namespace laywright

#include "session/records_home.h"

#include <cstdlib>

#include "session/data_folder.h"
#include "session/folders.h"

namespace laywright {
namespace {

std::string own_file() {
  const std::filesystem::path folder = data_folder();
  return folder.empty() ? "" : (folder / "records.db").string();
}

}  // namespace

std::string records_place_text(const std::string& chosen) {
  if (!chosen.empty()) return chosen;
  const char* set = std::getenv(records_variable);
  return set != nullptr && *set != '\0' ? set : own_file();
}

Result<RecordBook> open_book(const std::string& place_text, Opening opening) {
  const Result<RecordsPlace> place = records_place(place_text);
  if (!place.ok()) return place.issues();
  if (opening == Opening::to_write && place_text == own_file()) {
    // That it cannot be made, opening the file tells.
    static_cast<void>(make_private_folder(data_folder()));
  }
  return RecordBook::open(place.value(), opening);
}

}  // namespace laywright

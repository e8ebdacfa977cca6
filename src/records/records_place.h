// Where records are kept: a file, or a server for a shop with several machines.
#pragma once

#include <filesystem>
#include <string>

#include "base/result.h"

namespace laywright {

struct RecordsPlace {
  std::filesystem::path file;  // empty: on a server
  std::string connection;      // to a server, with all it takes; may hold a password and is never shown
  bool has_password = false;   // the text gave one
  std::string words;           // the file, or "database shop on server winding.local": never a password

  [[nodiscard]] bool on_server() const { return file.empty(); }
};

// `text`: a file's name, or postgresql://USER@HOST/DATABASE (also postgres://, with all that libpq takes there). Errors: no
// name, no such address, a name that no database file can have.
[[nodiscard]] Result<RecordsPlace> records_place(const std::string& text);

}  // namespace laywright

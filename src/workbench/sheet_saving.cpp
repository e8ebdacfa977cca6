#include "workbench/sheet_saving.h"

#include "base/atomic_file.h"
#include "report/sheet_file.h"

namespace laywright {

Issues write_sheet(const std::string& path, const std::vector<Drawing>& pages, int page) {
  const std::string bytes = sheet_bytes(*sheet_format_of(path), pages, page);
  if (!bytes.empty()) return write_file_atomically(path, bytes);
  Issue issue;
  issue.file = path;
  issue.what = "the sheet could not be drawn; there may be too little memory";
  return {issue};
}

}  // namespace laywright

#include "session/sheet_saving.h"

#include <utility>

#include "paper/sheet_file.h"

namespace laywright {

MakeFile sheet_maker(const std::string& path, std::shared_ptr<const std::vector<Drawing>> pages, int page) {
  return [format = *sheet_format_of(path), pages = std::move(pages), page](Progress&) -> Result<std::string> {
    std::string bytes = sheet_bytes(format, *pages, page);
    if (!bytes.empty()) return bytes;
    Issue issue;
    issue.what = "the sheet could not be drawn; there may be too little memory";
    return issue;
  };
}

}  // namespace laywright

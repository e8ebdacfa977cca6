#include "session/page_saving.h"

#include <utility>

#include "base/spelling.h"

namespace laywright {

bool is_page_file(const std::string& path) {
  const std::string ending = ending_of(path);
  return ending == ".html" || ending == ".htm";
}

MakeFile page_maker(PageOrder order, MakePage make) {
  return [order = std::move(order), make = std::move(make)](Progress& progress) { return make(order, progress); };
}

}  // namespace laywright

#include "session/reasons.h"

#include "session/workbench.h"

namespace laywright {

std::string why_not_sound(const Workbench& bench) {
  return bench.active()->document->sound() ? "" : "The plan is not sound yet: mend what is marked first.";
}

std::string why_no_page(const Workbench& bench) {
  if (!bench.options().make_page) {
    return "This program was built without the share page. Build it with -DLAYWRIGHT_SHARE_PAGE=ON, which needs "
           "Emscripten.";
  }
  if (std::string why = why_not_sound(bench); !why.empty()) return why;
  const Document& document = *bench.active()->document;
  if (document.laying().stopped) return "Laying was stopped: lay the plan again, with F5.";
  return document.laid_in_full() ? "" : "The plan is being laid: the page can be saved when the whole wind lies.";
}

}  // namespace laywright

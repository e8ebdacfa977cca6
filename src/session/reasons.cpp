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

std::string why_not_write_order(const Workbench& bench) {
  const OpenOrder& order = bench.order();
  if (order.file().empty()) return reason::no_order;
  if (order.is_writing()) return "The files are still being written: wait a moment, or stop it.";
  if (has_error(order.issues()) || (order.laid() && !order.laid()->not_placed.empty()))
    return "The order cannot be delivered as it stands: mend what is told of it, and read it again.";
  if (order.can_be_written()) return "";
  return order.status().busy ? "The order is still being laid in full: wait for it."
                             : "The order was not laid in full: read it again.";
}

}  // namespace laywright

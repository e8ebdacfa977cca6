// What the page's script calls. A page is one Viewer, its worker one Winder; texts are UTF-8 that ends with a zero.
#include <array>
#include <exception>
#include <memory>
#include <string>

#include <emscripten.h>

#include "plan/plan_file.h"
#include "web/browser/viewer.h"
#include "web/browser/winder.h"

namespace laywright {

struct PageViewer {
  Viewer viewer;
  std::string answer;
  std::array<std::uintptr_t, 3> columns{};
};

struct PageWinder {
  std::unique_ptr<Winder> winder;
  // Addresses of the block of bytes and the columns, and how many; the fineness; the cost that was learned.
  std::array<double, 9> result{};
  std::string trouble;
};

extern "C" {

EMSCRIPTEN_KEEPALIVE PageViewer* viewer_open() { return new PageViewer; }

// {"value": the answer} or {"trouble": words}.
EMSCRIPTEN_KEEPALIVE const char* viewer_answer(PageViewer* page, const char* name, const char* in) {
  nlohmann::json out;
  try {
    out["value"] = page->viewer.answer(name, nlohmann::json::parse(in));
  } catch (const std::exception& error) {
    out = {{"trouble", error.what()}};
  }
  page->answer = out.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  return page->answer.c_str();
}

// Addresses of the three columns; null when there is no memory for them.
EMSCRIPTEN_KEEPALIVE const std::uintptr_t* viewer_room(PageViewer* page, std::size_t nodes) {
  try {
    NodeStore::Columns& columns = page->viewer.room_for(nodes);
    page->columns = {reinterpret_cast<std::uintptr_t>(columns.x.data()),
                     reinterpret_cast<std::uintptr_t>(columns.r.data()),
                     reinterpret_cast<std::uintptr_t>(columns.flags.data())};
    return page->columns.data();
  } catch (const std::exception&) {
    return nullptr;
  }
}

EMSCRIPTEN_KEEPALIVE bool viewer_take(PageViewer* page, const std::uint8_t* bytes, std::size_t count,
                                      const char* plan_text, double fidelity, double share) {
  try {
    return page->viewer.take(bytes, count, plan_text, {fidelity, share});
  } catch (const std::exception&) {
    return false;
  }
}

// How many steps there are; 0 when the plan is not sound.
EMSCRIPTEN_KEEPALIVE std::size_t winder_plan(PageWinder* page, const char* plan_text, double seed,
                                             double ns_per_node) {
  const Result<Plan> plan = plan_from_text(plan_text, "");
  if (!plan) return 0;
  page->winder = std::make_unique<Winder>(plan.value(), static_cast<std::uint64_t>(seed), LayCost{ns_per_node});
  return page->winder->passes();
}

EMSCRIPTEN_KEEPALIVE PageWinder* winder_open() { return new PageWinder; }

// Null when it failed: winder_trouble() says why.
EMSCRIPTEN_KEEPALIVE const double* winder_wind(PageWinder* page, std::size_t pass) {
  try {
    Winder& winder = *page->winder;
    winder.wind(pass);
    const NodeStore::Columns& columns = winder.build().nodes.columns();
    const auto address = [](const auto& vector) {
      return static_cast<double>(reinterpret_cast<std::uintptr_t>(vector.data()));
    };
    page->result = {address(winder.bytes()),    static_cast<double>(winder.bytes().size()),
                    address(columns.x),         address(columns.r),
                    address(columns.flags),     static_cast<double>(columns.x.size()),
                    winder.pass(pass).fidelity, winder.pass(pass).share,
                    winder.cost().ns_per_node};
    return page->result.data();
  } catch (const std::bad_alloc&) {
    page->trouble = "There is not enough memory here for the whole build of this wind.";
  } catch (const std::exception& error) {
    page->trouble = error.what();
  }
  return nullptr;
}

EMSCRIPTEN_KEEPALIVE const char* winder_trouble(const PageWinder* page) { return page->trouble.c_str(); }

}  // extern "C"

}  // namespace laywright

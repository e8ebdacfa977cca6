// What the page shows and does, without its buttons: the plan, what was laid of it, and how it is looked at. The page
// asks by name, with JSON both ways; the names and their arguments stand in viewer.cpp, viewer_view.cpp and
// viewer_answers.cpp.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include <nlohmann/json.hpp>

#include "desk/stage.h"
#include "lay/node_store.h"
#include "web/browser/picture.h"
#include "web/browser/plan_desk.h"

namespace laywright {

class Viewer {
 public:
  using Json = nlohmann::json;

  // Throws what is wrong with the question: nlohmann's exceptions, std::out_of_range for an unknown name.
  [[nodiscard]] Json answer(const std::string& name, const Json& in);

  // Room for the columns of a build that is about to come; then the rest of it. False when they do not fit together.
  [[nodiscard]] NodeStore::Columns& room_for(std::size_t nodes);
  [[nodiscard]] bool take(const std::uint8_t* bytes, std::size_t count, const std::string& plan_text,
                          const Pass& pass);

 private:
  Json start(const Json& in);
  Json change(const Json& in);
  Json revert(const Json& in);
  Json step_field(const Json& in);
  Json plan_text(const Json& in);

  Json size(const Json& in);
  Json orbit(const Json& in);
  Json pan(const Json& in);
  Json zoom(const Json& in);
  Json look(const Json& in);
  Json fit(const Json& in);
  Json show(const Json& in);
  Json show_all(const Json& in);
  Json peel(const Json& in);
  Json wedge(const Json& in);
  Json cut(const Json& in);
  Json make_ready(const Json& in);
  Json draw(const Json& in);
  Json words(const Json& in);
  Json lose_picture(const Json& in);

  Json scrub(const Json& in);
  Json play(const Json& in);
  Json rate(const Json& in);
  Json step(const Json& in);

  Json fly(const Json& in);
  Json pick(const Json& in);
  Json toward(const Json& in);
  Json results(const Json& in);
  Json hash(const Json& in);
  Json seen(const Json& in);
  Json place(const Json& in);

  View& view() { return stage_.view; }
  [[nodiscard]] Json facts() const;
  Picture& picture();
  void draw_words(const Scene& scene);

  std::optional<PlanDesk> desk_;
  std::uint64_t seed_ = 1;
  NodeStore::Columns incoming_;
  WoundPtr wound_;
  Stage stage_;
  bool fitted_ = false;  // the camera was set by a wind, or by the person
  double text_scale_ = 1.0;
  bool legend_ = true;
  std::unique_ptr<Picture> picture_;
};

}  // namespace laywright

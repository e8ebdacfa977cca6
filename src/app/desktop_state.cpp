#include "app/desktop_state.h"

#include <nlohmann/json.hpp>

#include "app/desktop_advice.h"
#include "app/desktop_order.h"
#include "app/desktop_records.h"
#include "desk/machine_quantity.h"
#include "measure/severity.h"
#include "ui/advice_parts.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json optional(const auto& value) { return value ? Json(*value) : Json(nullptr); }

Json fields(const Workbench& bench) {
  Json all = Json::object();
  for (const FieldRow& row : bench.rows()) {
    Json issues = Json::array();
    for (const Issue& issue : row.issues) issues.push_back(issue.what);
    all[row.path] = {{"text", row.text}, {"unit", row.unit != nullptr ? row.unit->name : ""}, {"issues", issues}};
  }
  return all;
}

Json beginning(const Workbench& bench) {
  const PlanBeginning& begun = bench.beginning();
  Json issues = Json::array();
  for (const Issue& issue : begun.issues()) issues.push_back(issue.key);
  return {{"busy", begun.status().busy},
          {"verdict", begun.proposed() ? Json(verdict_line(begun.proposed()->verdict)) : Json(nullptr)},
          {"issues", issues}};
}

Json build(const Wound& wound) {
  Json findings = Json::array();
  for (const Finding& f : wound.measurements().findings) {
    findings.push_back({{"kind", name_of(f.kind)}, {"layer", f.layer}, {"turn", f.turn}, {"size_d", f.size_d}});
    findings.back()["severity"] = name_of(f.severity);
  }
  Json verdict = nullptr;
  if (const VerdictPtr v = wound.verdict()) verdict = {{"grade", name_of(v->grade)}, {"line", verdict_line(*v)}};
  return {{"turns", wound.build().turns},
          {"length_mm", wound.build().length_mm},
          {"layers", wound.build().strokes.size()},
          {"outer_diameter_mm", wound.measurements().outer_diameter.middle_mm},
          {"full", wound.pass.full()},
          {"revision", wound.revision},
          {"verdict", std::move(verdict)},
          {"findings", std::move(findings)}};
}

Json stage(const Stage& stage, const Wound& wound) {
  const View& view = stage.view;
  const Moment moment = moment_of(stage.playback, wound);
  const auto node = picked_node(stage, wound);
  Json picked = nullptr;
  if (node) {
    const NodeFacts f = facts_of(wound.source, *node);
    picked = {{"turn", f.turn}, {"layer", f.layer}, {"x_mm", f.x_mm}, {"r_mm", f.r_mm}};
  }
  Json shows = Json::object();
  for (const ViewSwitch& s : view_switches) shows[std::string(s.name)] = view.*s.shown;
  const Vec3& t = view.camera.target;
  return {{"picked", std::move(picked)},
          {"chosen_finding", optional(view.chosen_finding)},
          {"scrub",
           {{"at_end", moment.at_end},
            {"turn", moment.turn},
            {"length_mm", moment.length_mm},
            {"layer", moment.layer},
            {"playing", stage.playback.playing}}},
          {"wedge", view.wedge ? Json{view.wedge->from, view.wedge->to} : Json(nullptr)},
          {"axial_cut", optional(view.axial_cut_rad)},
          {"first_layer", view.first_layer},
          {"last_layer", optional(view.last_layer)},
          {"colouring", static_cast<int>(view.colouring)},
          {"shows", std::move(shows)},
          {"inch", view.units == Units::inch},
          {"dark", view.theme == Theme::dark},
          {"camera",
           {{"azimuth_deg", view.camera.azimuth_deg},
            {"elevation_deg", view.camera.elevation_deg},
            {"distance_mm", view.camera.distance_mm},
            {"target", {t.x, t.y, t.z}}}}};
}

Json section(const SectionState& section) {
  return {{"drawn", section.image.version > 0},
          {"angle_deg", section.angle_deg},
          {"x_from_mm", section.seen.x_from},
          {"width_mm", section.seen.x_to - section.seen.x_from}};
}

// What the tab Machine shows.
Json machine(const Workbench& bench, const Wound& wound) {
  const TakeupPtr run = wound.takeup();
  if (!run) return nullptr;
  const Stage& stage = bench.active()->stage;
  Json shown = Json::object(), missing = Json::object(), warnings = Json::array();
  for (const MachineRow& row : machine_rows(wound, *run, moment_of(stage.playback, wound), stage.view.units)) {
    if (row.missing.empty()) shown[row.id] = row.text;
    if (!row.missing.empty()) missing[row.id] = row.missing;
  }
  for (const MachineWarning& w : run->warnings) {
    warnings.push_back({{"kind", name_of(w.kind)}, {"note", w.note}, {"text", w.text}});
  }
  return {{"shown", std::move(shown)}, {"missing", std::move(missing)}, {"warnings", std::move(warnings)}};
}

Json sheet(const Workbench& bench, const SheetState& state) {
  Json saving = nullptr;
  if (const std::optional<FileSaving> s = bench.sheet_saving()) {
    saving = {{"path", s->path}, {"done", s->outcome.has_value()}, {"failed", s->outcome && !s->outcome->empty()}};
  }
  const PanelImage& page = state.pages.images[0];
  return {{"drawn", state.pages.drawings != nullptr},
          {"letter", state.pages.paper == Paper::letter},
          {"page_px", {page.width, page.height}},
          {"saving", std::move(saving)}};
}

Json choices_of(const PageChoices& page) {
  return {{"for_customer", page.for_customer}, {"title", page.letter.title},
          {"customer", page.letter.customer},  {"sender", page.letter.sender},
          {"greeting", page.letter.greeting},  {"logo", page.logo},
          {"verdict", page.letter.verdict},    {"notes", page.letter.notes}};
}

// For who drives the window.
const char* name_of(cmd::Question question) {
  switch (question) {
    case cmd::Question::file_to_open: return "file to open";
    case cmd::Question::file_to_save: return "file to save";
    case cmd::Question::what_to_compare: return "what to compare";
    case cmd::Question::close_unsaved: return "close unsaved";
    case cmd::Question::help: return "help";
    case cmd::Question::setup_sheet: return "setup sheet";
    case cmd::Question::sheet_to_save: return "sheet to save";
    case cmd::Question::better_settings: return "better settings";
    case cmd::Question::share_page: return "share page";
    case cmd::Question::page_to_save: return "page to save";
    case cmd::Question::new_plan: return "new plan";
    case cmd::Question::readings_to_open: return "readings to open";
    case cmd::Question::readings_to_save: return "readings to save";
    case cmd::Question::records: return "records";
    case cmd::Question::order: return "order";
    case cmd::Question::order_to_open: return "order to open";
    case cmd::Question::order_folder: return "order folder";
  }
  return "";
}

Json showing(const Workbench& bench) {
  const Showing& show = *bench.showing();
  const ShowFigures figures = figures_of_showing(show, *bench.wound());
  return {{"seconds", show.seconds},           {"paused", show.paused},          {"details", show.details},
          {"filled", share_filled(show)},      {"length_mm", figures.length_mm}, {"turns", figures.turns},
          {"diameter_mm", figures.diameter_mm}};
}

Json lesson(const Workbench& bench) {
  const LessonRun& run = *bench.lesson();
  const LessonStep& step = run.now();
  Json tried = nullptr;
  if (const std::optional<Tried> t = bench.tried()) {
    tried = {{"before", optional(t->before)},
             {"now", optional(t->now)},
             {"settled", t->settled},
             {"reached", t->reached}};
  }
  return {{"file", run.lesson->file},
          {"number", run.lesson->number},
          {"step", run.step + 1},
          {"steps", run.lesson->steps.size()},
          {"waits", run.waits},
          {"asks", step.question ? Json(step.question->answers.size()) : Json(nullptr)},
          {"plays", step.play.has_value()},
          {"points", step.point.has_value()},
          {"place", run.place.has_value()},
          {"key", step.attempt ? Json(step.attempt->key) : Json(nullptr)},
          {"answer", optional(run.answer())},
          {"right", run.answer() ? Json(*run.answer() == step.question->right) : Json(nullptr)},
          {"tried", std::move(tried)}};
}

}  // namespace

std::string state_json(const Workbench& bench, const PanelState& panels, const Shown& shown,
                       const DesktopTimes& times) {
  Json all;
  const Desk* desk = bench.active();
  all["documents"] = bench.documents().size();
  all["hint"] = bench.hint();
  all["typing"] = panels.typing.path;
  all["typed"] = panels.typing.text;
  all["keys_in"] = panels.focus.panel;
  all["any_unsaved"] = bench.any_unsaved();
  all["scale"] = panels.scale;
  all["showing"] = bench.showing() ? showing(bench) : Json(nullptr);
  all["lesson"] = bench.lesson() ? lesson(bench) : Json(nullptr);
  all["page"] = bench.page_saving() ? saving_json(*bench.page_saving()) : Json(nullptr);
  all["page_choices"] = choices_of(bench.settings().page);
  all["comparing"] = bench.comparison().has_value();
  all["question"] = bench.question() ? Json(name_of(*bench.question())) : Json(nullptr);
  if (bench.wound()) all["section"] = section(panels.section);
  all["map"] = {{"drawn", panels.map.image.version > 0},
                {"trouble", trouble_words(panels.map.work.trouble())},
                {"x_from", panels.map.x_from},
                {"x_to", panels.map.x_to}};
  all["beginning"] = beginning(bench);
  all["records"] = records_json(bench, panels);
  all["order"] = order_json(bench.order(), in_inches(bench));
  all["recovery_offers"] = bench.recovery_offers().size();
  all["recent"] = bench.settings().recent;
  all["notices"] = Json::array();
  for (const Notice& notice : bench.notices()) all["notices"].push_back(notice.text);
  if (desk != nullptr) {
    all["file"] = desk->document->path().string();
    all["title"] = desk->document->title();
    all["dirty"] = desk->document->dirty();
    all["sound"] = desk->document->sound();
    all["laying"] = desk->document->laying().busy;
    all["can_undo"] = desk->document->history().can_undo();
    all["fields"] = fields(bench);
    all["advice"] = advice_json(bench, panels);
  }
  if (const WoundPtr wound = bench.wound()) {
    all["build"] = build(*wound);
    all["stage"] = stage(desk->stage, *wound);
    all["machine"] = machine(bench, *wound);
    all["sheet"] = sheet(bench, panels.sheet);
  }
  all["scene"] = shown.scene != nullptr;
  all["colours_share"] = optional(panels.colours.share);
  all["scene_busy"] = shown.busy;
  all["times"] = {{"first_frame_ms", times.first_frame_ms},
                  {"first_picture_ms", times.first_picture_ms},
                  {"longest_turn_ms", times.longest_turn_ms},
                  {"last_turn_ms", times.last_turn_ms},
                  {"frames", times.frames},
                  {"pictures", times.pictures},
                  {"inputs", times.inputs},
                  {"turns_ms", times.turns_ms},
                  {"passes", times.painter.passes},
                  {"last_pass_ms", times.painter.last_pass_ms},
                  {"longest_pass_ms", times.painter.longest_pass_ms}};
  all["painted"] = times.painted;
  all["rests"] = times.rests;
  for (const auto& [name, box] : panels.places.at) all["places"][name] = {box.x, box.y, box.width, box.height};
  return all.dump(1);
}

}  // namespace laywright

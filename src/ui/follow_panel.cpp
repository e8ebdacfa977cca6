// A wind that is followed: the checklist with what was read, beside what it should be; what is off, and what to change now.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "answers/follow_words.h"
#include "answers/stations_words.h"
#include "figures/dial_words.h"
#include "session/advice.h"
#include "session/advice_commands.h"
#include "session/follow_commands.h"
#include "session/scrub_commands.h"
#include "session/window_commands.h"
#include "ui/advice_parts.h"
#include "ui/focus.h"
#include "ui/panels.h"
#include "ui/reading_cells.h"
#include "ui/style.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

constexpr const char* follow_place = "follow";

// How a row stands: none of it was read, or not yet held against the plan; on plan; off.
enum class RowState { unread, waits, on_plan, off };

struct RowStanding {
  RowState state = RowState::unread;
  std::string words;
};

// `followed`: what was typed when the answer was asked for, in the units of the rows.
RowStanding standing_of(const TypedReadings& typed, std::size_t row, const FollowAnswer* answer,
                        const TypedReadings& followed) {
  if (typed[row].empty()) return {};
  if (answer == nullptr) return {RowState::waits, "not followed yet"};
  const auto same = std::find_if(followed.begin(), followed.end(), [&](const TypedRow& each) {
    return each.cells == typed[row].cells && (each.same_place(typed[row]) || !(each.layer || each.at_end));
  });
  if (same == followed.end()) return {RowState::waits, "not followed yet"};
  const int line = static_cast<int>(same - followed.begin()) + 2;
  const Compared* worst = nullptr;
  for (const Compared& each : answer->followed.beside.readings) {
    if (answer->wound.readings[each.observation.reading].line != line) continue;
    if (worst == nullptr || std::abs(each.off_sigmas()) > std::abs(worst->off_sigmas())) worst = &each;
  }
  if (worst == nullptr) return {RowState::waits, "nothing to compare"};
  if (!worst->beyond()) return {RowState::on_plan, "on plan"};
  return {RowState::off, fmt::format("{} {}", worst->observation.what, off_words(*worst, typed[row].inch))};
}

// A circle on plan, a triangle off, a line where nothing is known.
void shape_of(RowState row_state, const ImVec4& color) {
  const float size = ImGui::GetFontSize();
  const ImVec2 low = ImGui::GetCursorScreenPos();
  const ImVec2 middle{low.x + 0.5F * size, low.y + 0.5F * ImGui::GetFrameHeight()};
  const float r = 0.32F * size;
  ImDrawList* draw = ImGui::GetWindowDrawList();
  const ImU32 ink = ImGui::GetColorU32(color);
  switch (row_state) {
    case RowState::on_plan: draw->AddCircleFilled(middle, r, ink); break;
    case RowState::off:
      draw->AddTriangleFilled({middle.x, middle.y - r}, {middle.x + r, middle.y + r}, {middle.x - r, middle.y + r},
                              ink);
      break;
    case RowState::unread:
    case RowState::waits: draw->AddLine({middle.x - r, middle.y}, {middle.x + r, middle.y}, ink, 2.0F); break;
  }
  ImGui::Dummy({size, ImGui::GetFrameHeight()});
  ImGui::SameLine(0.0F, 0.4F * size);
}

// Of what a row is, so that the cells beside it stay in sight.
float words_width() { return em(8.5F); }

void row(const Workbench& bench, const TypedReadings& typed, const TypedReadings& followed, std::size_t i,
         const std::vector<Checkpoint>& checkpoints, PanelState& state, Commands& out) {
  const TypedRow& typed_row = typed[i];
  const Checkpoint* at = checkpoint_of(checkpoints, typed_row);
  const Theme theme = theme_of(bench);
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::PushID(static_cast<int>(i));
  ImGui::AlignTextToFramePadding();
  const bool here = at != nullptr && std::abs(moment_of(bench.active()->stage.playback, *bench.wound()).length_mm -
                                              at->length_mm) < 1.0;
  if (ImGui::Selectable(place_words(typed_row).c_str(), here) && at != nullptr) {
    out.push_back(cmd::scrub_length(at->length_mm));
    keep_keys_in_list("Follow", state);
  }
  state.places.note_item(fmt::format("follow row {}", i));
  ImGui::TableNextColumn();
  const RowStanding standing = standing_of(typed, i, bench.active()->advice->follow().get(), followed);
  const ImVec4 color = standing.state == RowState::off ? error_color(theme) : quiet_color();
  shape_of(standing.state,
           standing.state == RowState::on_plan ? ImGui::GetStyleColorVec4(ImGuiCol_CheckMark) : color);
  ImGui::AlignTextToFramePadding();
  const std::string words = wrapped(standing.words, words_width());
  if (standing.state == RowState::off) {
    ImGui::TextColored(color, "%s", words.c_str());
  } else {
    ImGui::TextUnformatted(words.c_str());
  }
  state.places.note_item(fmt::format("follow state {} {}", i, standing.words));
  for (std::size_t cell = 0; cell < reading_cells; ++cell) {
    ImGui::TableNextColumn();
    ImGui::PushID(static_cast<int>(cell));
    ImGui::SetNextItemWidth(em(4.6F));
    std::string text = typed_row.cells[cell];
    const std::string hint = planned_in(at, cell, typed_row.inch);
    if (ImGui::InputTextWithHint("##cell", hint.c_str(), &text))
      out.push_back(cmd::type_reading(typed_row, cell, text));
    state.places.note_item(fmt::format("follow cell {} {}", i, cell));
    if (ImGui::IsItemActive()) state.places.note_item(fmt::format("follow typing {} {}", i, cell));
    ImGui::PopID();
  }
  ImGui::PopID();
}

void checklist_table(const Workbench& bench, const std::vector<Checkpoint>& checkpoints, float width,
                     PanelState& state, Commands& out) {
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY | ImGuiTableFlags_ScrollX |
                                    ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerV;
  if (!ImGui::BeginTable("checklist", 2 + static_cast<int>(reading_cells), flags,
                         {width, ImGui::GetContentRegionAvail().y}))
    return;
  take_keys_here("Follow", true, state);
  ImGui::TableSetupScrollFreeze(2, 1);  // what a row is stays in sight
  const Counter* counter = counter_of(bench.wound()->plan());
  const TypedReadings typed =
      in_units(with_checkpoints(bench.active()->readings, checkpoints), counter, in_inches(bench));
  const bool inch = !typed.empty() && typed.front().inch;
  const auto& answer = bench.active()->advice->follow();
  const TypedReadings followed = answer ? in_units(answer->typed, counter, inch) : TypedReadings{};
  const std::vector<std::string> heads = reading_heads(counter, inch);
  std::vector<const char*> names{"Read", "Is"};
  for (const std::string& head : heads) names.push_back(head.c_str());
  for (const char* name : names) ImGui::TableSetupColumn(name);
  table_heads(names, 99,
              {"Click a row: the scrubber goes there",
               "Circle: on plan. Triangle: off by more than errors of reading and the wind's scatter explain",
               "Counted since the start; grey: as planned", "Since the start; grey: as planned",
               "Outer diameter over the fiber at the left flange", "In the middle", "At the right flange",
               "Of the last whole layer, over its outermost turns"});
  for (std::size_t i = 0; i < typed.size(); ++i) row(bench, typed, followed, i, checkpoints, state, out);
  ImGui::EndTable();
}

void forecast_words(const Workbench& bench, const char* label, const char* words, const Forecast& forecast,
                    bool changed, PanelState& state, Commands& out) {
  wrapped_text(fmt::format("{}{}", words, verdict_line(forecast.verdict)));
  command_button(bench, label, cmd::show_forecast(changed),
                 "Beside the wind as it was planned: laid anew from the last reading on, an estimate.", out);
  state.places.note_item(changed ? "follow show changed" : "follow show unchanged");
}

void answer_words(const Workbench& bench, const FollowAnswer& answer, PanelState& state, Commands& out) {
  const Followed& followed = answer.followed;
  const Plan& plan = answer.of.plan;
  stale_line(bench, AdviceKind::follow, follow_place, state);
  ImGui::BeginGroup();
  heading(followed.on_plan ? "On plan" : "Off plan", state);
  wrapped_text(standing_words(followed, in_inches(bench)));
  if (followed.likely) wrapped_text(found_words(plan, followed));
  ImGui::EndGroup();
  state.places.note_item(followed.on_plan ? "follow on plan" : "follow off plan");
  heading("Now", state);
  for (const std::string& each : change_words(plan, followed)) wrapped_text(each);
  if (followed.changed) {
    ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
    wrapped_text(change_caution());
    ImGui::PopStyleColor();
  }
  heading("What it will be", state);
  if (followed.changed)
    forecast_words(bench, "Show with the change", "With the change from here on: ", *followed.changed, true, state,
                   out);
  if (answer.fidelity < 1.0) coloured(quiet_color(), stations_words(answer.fidelity, "These winds"));
  forecast_words(bench, followed.on_plan ? "Show what it will be" : "Show with nothing changed",
                 followed.on_plan ? "" : "If nothing is changed: ", *followed.unchanged, false, state, out);
}

void follow_words(const Workbench& bench, PanelState& state, Commands& out) {
  const Advice& advice = *bench.active()->advice;
  command_button(bench, "Follow the wind", cmd::follow_wind(), "Hold what was read against the plan.", out);
  state.places.note_item("follow now");
  ImGui::SameLine();
  if (ImGui::Button("Open...")) out.push_back(cmd::ask(cmd::Question::readings_to_open));
  state.places.note_item("follow open");
  ImGui::SameLine();
  command_button(bench, "Save...", cmd::ask(cmd::Question::readings_to_save), "Save what was read as a table.", out);
  state.places.note_item("follow save");
  ImGui::SameLine();
  command_button(bench, "Clear", cmd::clear_readings(), "Forget what was read, for another spool.", out);
  state.places.note_item("follow clear");
  inquiry_line(bench, AdviceKind::follow, "Laying winds", follow_place, state, out);
  if (advice.follow()) return answer_words(bench, *advice.follow(), state, out);
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  wrapped_text(
      "While a spool is wound, read it at these places and type what you read beside what it should be (grey); "
      "leave empty "
      "what was not measured. Then follow the wind: whether it is on plan, what to change now, and what it will "
      "be.");
  ImGui::PopStyleColor();
}

}  // namespace

void follow_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const TakeupPtr run = bench.wound()->takeup();
  if (!bench.active()->document->laid_in_full() || !run) {
    wrapped_text("The checklist comes with the whole build.");
    return;
  }
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const bool both = room.x >= em(56.0F);
  const float table = both ? std::min(0.62F * room.x, em(58.0F)) : 0.0F;
  if (!both) {
    ImGui::BeginChild("follow words", {0.0F, 0.5F * room.y});
    follow_words(bench, state, out);
    ImGui::EndChild();
  }
  checklist_table(bench, run->checkpoints, table, state, out);
  if (!both) return;
  ImGui::SameLine(0.0F, em(1.2F));
  ImGui::BeginChild("follow words");
  follow_words(bench, state, out);
  ImGui::EndChild();
}

}  // namespace laywright

#include "ui/plan_field.h"

#include <imgui_stdlib.h>

#include "desk/field_steps.h"
#include "session/plan_commands.h"
#include "ui/style.h"

namespace laywright {
namespace {

using Clock = TypingState::Clock;
using Seconds = std::chrono::duration<double>;

constexpr double pause_s = 0.7;  // of somebody who has typed what was to be typed
constexpr double first_repeat_s = 0.4, next_repeat_s = 0.08;

double steps_by_keys() {
  const ImGuiIO& io = ImGui::GetIO();
  return io.KeyShift ? 10.0 : io.KeyCtrl ? 0.1 : 1.0;
}

struct ArrowKeys {
  const FieldRow& row;
  double fiber_mm;
  bool stepped = false;
};

int step_by_arrow(ImGuiInputTextCallbackData* data) {
  auto& keys = *static_cast<ArrowKeys*>(data->UserData);
  const double way = data->EventKey == ImGuiKey_UpArrow ? 1.0 : -1.0;
  const std::string now(data->Buf, static_cast<std::size_t>(data->BufTextLen));
  const auto next = stepped(keys.row, now, way * steps_by_keys(), keys.fiber_mm);
  if (!next) return 0;
  data->DeleteChars(0, data->BufTextLen);
  data->InsertChars(0, next->c_str());
  data->SelectAll();
  keys.stepped = true;
  return 0;
}

void send(TypingState& typing, Commands& out) {
  typing.typed_at.reset();
  if (typing.text == typing.sent) return;
  typing.sent = typing.text;
  out.push_back(cmd::type_field(typing.path, typing.text, typing.gesture));
}

// Escape gives up what was typed, and what of it the plan has already.
void give_up(const Desk& desk, TypingState& typing, Commands& out) {
  if (desk.document->changes() != typing.changes) out.push_back(cmd::undo());
  typing = {};
}

void follow(const Desk& desk, const FieldRow& row, const std::string& text, bool changed, bool by_arrow,
            TypingState& typing, Commands& out) {
  if (typing.path != row.path || typing.desk != desk.id) return;
  typing.seen = true;
  if (changed) {
    typing.text = text;
    typing.typed_at.reset();
    if (stands_for_itself(row, text)) typing.typed_at = Clock::now();
  }
  if (by_arrow) send(typing, out);
  if (typing.typed_at && Seconds(Clock::now() - *typing.typed_at).count() >= pause_s) send(typing, out);
  if (!ImGui::IsItemDeactivated()) return;
  if (ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape))) return give_up(desk, typing, out);
  send(typing, out);
  typing = {};
}

void step_button(const Desk& desk, const FieldRow& row, const ImVec2& low, const ImVec2& size, double way,
                 double fiber_mm, PanelState& state, Commands& out) {
  ImGui::SetCursorScreenPos(low);
  ImGui::PushAllowKeyboardFocus(false);
  ImGui::InvisibleButton(way > 0.0 ? "more" : "less", size);
  ImGui::PopAllowKeyboardFocus();
  state.places.note_item(std::string(way > 0.0 ? "more " : "less ") + row.path);
  const bool hovered = ImGui::IsItemHovered();
  const ImVec2 middle{low.x + 0.5F * size.x, low.y + 0.5F * size.y};
  const float half = em(0.22F), up = static_cast<float>(way) * em(0.12F);
  ImGui::GetWindowDrawList()->AddTriangleFilled(
      {middle.x - half, middle.y + up}, {middle.x + half, middle.y + up}, {middle.x, middle.y - up},
      ImGui::GetColorU32(hovered ? ImGuiCol_CheckMark : ImGuiCol_TextDisabled, hovered ? 1.0F : 0.75F));
  if (hovered && !ImGui::IsItemActive()) {
    ImGui::SetTooltip("%s", way > 0.0 ? "A step more (Up in the field); with Shift ten, with Ctrl a tenth"
                                      : "A step less (Down in the field); with Shift ten, with Ctrl a tenth");
  }
  StepState& step = state.step;
  const Clock::time_point now = Clock::now();
  const bool begins = ImGui::IsItemActivated();
  if (ImGui::IsItemDeactivated()) step = {};
  if (begins) step = {row.path, ++state.gestures, now};
  if (!ImGui::IsItemActive() || step.path != row.path || now < step.next) return;
  step.next = now + std::chrono::duration_cast<Clock::duration>(Seconds(begins ? first_repeat_s : next_repeat_s));
  const bool typed_here = state.typing.path == row.path && state.typing.desk == desk.id;
  const auto next = stepped(row, typed_here ? state.typing.text : row.text, way * steps_by_keys(), fiber_mm);
  if (typed_here) state.typing = {};
  if (next) out.push_back(cmd::type_field(row.path, *next, step.gesture));
}

}  // namespace

void text_field(const Desk& desk, const FieldRow& row, double fiber_mm, PanelState& state, Commands& out) {
  TypingState& typing = state.typing;
  std::string text = typing.path == row.path && typing.desk == desk.id ? typing.text : row.text;
  const char* empty = row.idle.empty() ? (row.info->required ? "needed" : "none") : "";
  ArrowKeys keys{row, fiber_mm};
  const bool changed = ImGui::InputTextWithHint(
      "##value", empty, &text, ImGuiInputTextFlags_AutoSelectAll | ImGuiInputTextFlags_CallbackHistory,
      step_by_arrow, &keys);
  if (ImGui::IsItemActivated()) {
    typing = {row.path, row.text, row.text, ++state.gestures, desk.id, desk.document->changes(), {}, true};
  }
  follow(desk, row, text, changed, keys.stepped, typing, out);
}

float step_buttons_width() { return em(1.0F); }

void step_buttons(const Desk& desk, const FieldRow& row, double fiber_mm, PanelState& state, Commands& out) {
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  const ImVec2 size{step_buttons_width(), 0.5F * (high.y - low.y)};
  ImGui::SameLine(0.0F, 0.0F);
  ImGui::BeginGroup();
  step_button(desk, row, {high.x, low.y}, size, 1.0, fiber_mm, state, out);
  step_button(desk, row, {high.x, low.y + size.y}, size, -1.0, fiber_mm, state, out);
  ImGui::EndGroup();
}

void send_typed(const Workbench& bench, PanelState& state, Commands& out) {
  TypingState& typing = state.typing;
  const Desk* desk = bench.active();
  if (typing.path.empty() || desk == nullptr || desk->id != typing.desk) return;
  if (field_at(desk->document->state().draft, typing.path) != nullptr) send(typing, out);
}

void leave_lost_field(const Workbench& bench, PanelState& state, Commands& out) {
  if (!state.typing.path.empty() && !state.typing.seen) {
    send_typed(bench, state, out);
    state.typing = {};
  }
  state.typing.seen = false;
}

std::optional<double> seconds_to_typed(const PanelState& state) {
  const Clock::time_point now = Clock::now();
  if (!state.step.path.empty()) return Seconds(state.step.next - now).count();
  if (!state.typing.typed_at) return std::nullopt;
  return pause_s - Seconds(now - *state.typing.typed_at).count();
}

}  // namespace laywright

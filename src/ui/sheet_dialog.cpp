#include "ui/dialogs.h"

#include <algorithm>
#include <cmath>

#include "session/window_commands.h"
#include "ui/modal.h"
#include "ui/panel_trouble.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr float most_px_per_mm = 8.0F;  // 203 dots per inch: finer than any screen shows it
constexpr const char* title = "Set-up sheet for the winder";

// Why there is no sheet of the plan as it stands; empty: there is one.
const char* why_none(const Workbench& bench) {
  const Document& document = *bench.active()->document;
  if (!document.sound()) return "The plan is not sound yet: mend what is marked, and the sheet is drawn.";
  if (document.laying().stopped) return "Laying was stopped: lay the plan again (F5), and the sheet is drawn.";
  if (!document.laid_in_full() || !document.wound()->takeup()) {
    return "The plan is being laid; the sheet is drawn when the whole wind lies.";
  }
  return "";
}

void prepare(const Workbench& bench, int page_width_px, PanelState& panels) {
  SheetState& state = panels.sheet;
  if (std::optional<SheetPages> made = state.work.take()) {
    for (std::size_t i = 0; i < made->images.size(); ++i)
      made->images[i].version = state.pages.images[i].version + 1;
    state.pages = std::move(*made);
  }
  SheetRequest request{bench.wound(), std::nullopt,  bench.active()->document->changes(),
                       state.paper,   page_width_px, bench.verdict_in_hand()};
  if (serves(state.pages, request) || serves(state.asked, request)) return;
  Result<Plan> plan = check(bench.active()->document->state().draft);
  if (!plan) return;
  request.plan = std::move(plan).value();
  state.asked = promise_of(request);
  const bool same_build = state.pages.wound.lock() == request.wound;
  state.work.ask([request, picture = same_build ? state.pages.picture : nullptr,
                  draw = panels.paper_picture] { return draw_sheet(request, picture, draw); },
                 panels.wake);
}

void choices(PanelState& panels) {
  SheetState& state = panels.sheet;
  ImGui::AlignTextToFramePadding();
  ImGui::TextDisabled("Paper");
  const auto choice = [&](const char* name, bool on) {
    ImGui::SameLine();
    const bool pressed = ImGui::RadioButton(name, on);
    panels.places.note_item(std::string("sheet ") + name);
    return pressed;
  };
  if (choice("A4", state.paper == Paper::a4)) state.paper = Paper::a4;
  if (ImGui::IsWindowAppearing()) ImGui::SetItemDefaultFocus();
  if (choice("Letter", state.paper == Paper::letter)) state.paper = Paper::letter;
  ImGui::SameLine(0.0F, em(2.0F));
  ImGui::TextDisabled("Show");
  if (choice("Both pages", !state.wide)) state.wide = false;
  if (choice("To read", state.wide)) state.wide = true;
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("As wide as the window; the wheel scrolls.");
}

// Both pages whole and side by side, or as wide as there is room and one under the other.
float page_width(const SheetState& state, const ImVec2& room) {
  const float paper_mm = state.paper == Paper::a4 ? 210.0F : 215.9F;
  const float most = most_px_per_mm * paper_mm;
  const auto height = static_cast<float>(height_of(state.paper));
  const float width =
      state.wide ? room.x - ImGui::GetStyle().ScrollbarSize : std::min(0.5F * (room.x - em(0.8F)), room.y / height);
  return std::floor(std::clamp(width, 40.0F, most));
}

void pages(const Workbench& bench, PanelState& panels) {
  SheetState& state = panels.sheet;
  const ImVec2 room = ImGui::GetContentRegionAvail();
  if (const char* why = why_none(bench); *why != '\0') {
    ImGui::TextWrapped("%s", why);
    return;
  }
  const float width = page_width(state, room),
              height = std::round(width * static_cast<float>(height_of(state.paper)));
  prepare(bench, static_cast<int>(width), panels);
  const SheetRequest now{bench.wound(),          std::nullopt, bench.active()->document->changes(), state.paper, 0,
                         bench.verdict_in_hand()};
  if (!state.pages.drawings || !same_sheet(state.pages, now) || !panels.show_image) {
    if (state.work.trouble().empty()) {
      ImGui::TextDisabled("The sheet is being drawn...");
    } else {
      panel_trouble(state.work.trouble(), bench.active()->stage.view.theme);
    }
    return;
  }
  const float all = state.wide ? width : 2.0F * width + em(0.8F);
  const float left = std::floor(std::max(0.0F, 0.5F * (ImGui::GetContentRegionAvail().x - all)));
  for (std::size_t i = 0; i < state.pages.images.size(); ++i) {
    if (i > 0 && !state.wide) ImGui::SameLine(0.0F, em(0.8F));
    if (i == 0 || state.wide) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + left);
    const auto slot = i == 0 ? ImageSlot::sheet_page_1 : ImageSlot::sheet_page_2;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({std::floor(at.x), std::floor(at.y)});
    ImGui::Image(panels.show_image(slot, state.pages.images[i]), {width, height});
    ImGui::GetWindowDrawList()->AddRect(ImGui::GetItemRectMin(), ImGui::GetItemRectMax(),
                                        ImGui::GetColorU32(ImGuiCol_Border));
    panels.places.note_item(i == 0 ? "sheet page 1" : "sheet page 2");
  }
}

// What has become of the last saving.
void outcome(const Workbench& bench) {
  const std::optional<FileSaving> saving = bench.sheet_saving();
  if (!saving) return;
  ImGui::SameLine(0.0F, em(1.2F));
  const Theme theme = bench.active()->stage.view.theme;
  if (!saving->outcome) {
    ImGui::TextDisabled("Writing %s", saving->path.c_str());
  } else if (saving->outcome->empty()) {
    ImGui::TextWrapped("Saved as %s", saving->path.c_str());
  } else {
    ImGui::PushStyleColor(ImGuiCol_Text, error_color(theme));
    ImGui::TextWrapped("%s: %s", saving->path.c_str(), saving->outcome->front().what.c_str());
    ImGui::PopStyleColor();
  }
}

}  // namespace

void sheet_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  if (bench.active() == nullptr || !begin_modal(title, 400.0F, 400.0F)) return;
  choices(state);
  // What has become of a file may take a second line.
  const float below = ImGui::GetFrameHeight() + (bench.sheet_saving() ? ImGui::GetTextLineHeight() : 0.0F);
  ImGui::BeginChild("pages", {0.0F, -below - em(0.8F)}, false, state.sheet.wide ? 0 : ImGuiWindowFlags_NoScrollbar);
  pages(bench, state);
  ImGui::EndChild();
  ImGui::Spacing();
  const SheetPages& drawn = state.sheet.pages;
  const SheetRequest now{
      bench.wound(),          std::nullopt, bench.active()->document->changes(), state.sheet.paper, 0,
      bench.verdict_in_hand()};
  const bool ready = *why_none(bench) == '\0' && drawn.drawings && same_sheet(drawn, now);
  ImGui::BeginDisabled(!ready);
  if (ImGui::Button("Save...")) {
    out.push_back(cmd::ask(cmd::Question::sheet_to_save));
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndDisabled();
  state.places.note_item("sheet save");
  ImGui::SameLine();
  if (ImGui::Button("Close") || escape_pressed()) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  state.places.note_item("sheet close");
  outcome(bench);
  ImGui::EndPopup();
}

}  // namespace laywright

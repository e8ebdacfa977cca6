#include "ui/lesson_parts.h"

#include <fmt/format.h>

#include "lesson/figures.h"
#include "ui/style.h"

namespace laywright {
namespace {

ImU32 ink_of(Sign sign) {
  // Told apart by their shapes as well.
  const ImVec4 text = ImGui::GetStyleColorVec4(ImGuiCol_Text);
  const bool light = text.x < 0.5F;
  if (sign == Sign::right) return light ? IM_COL32(0, 122, 84, 255) : IM_COL32(75, 205, 155, 255);
  return ImGui::GetColorU32(error_color(light ? Theme::light : Theme::dark));
}

void draw_sign(Sign sign, const ImVec2& centre, float size) {
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImU32 ink = ink_of(sign);
  const float s = 0.5F * size, thick = 0.17F * size;
  if (sign == Sign::right) {
    const ImVec2 tick[3] = {
        {centre.x - s, centre.y}, {centre.x - 0.25F * s, centre.y + 0.7F * s}, {centre.x + s, centre.y - 0.7F * s}};
    canvas.AddPolyline(tick, 3, ink, 0, thick);
  } else if (sign == Sign::wrong) {
    const float c = 0.72F * s;
    canvas.AddLine({centre.x - c, centre.y - c}, {centre.x + c, centre.y + c}, ink, thick);
    canvas.AddLine({centre.x - c, centre.y + c}, {centre.x + c, centre.y - c}, ink, thick);
  }
}

// Texts of several lines end with one.
std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.back() == '\n' || text.back() == ' ')) text.remove_suffix(1);
  return text;
}

void text_in(ImFont* font, std::string_view text) {
  ImGui::PushFont(font);
  ImGui::TextUnformatted(wrapped(trimmed(text), ImGui::GetContentRegionAvail().x).c_str());
  ImGui::PopFont();
}

}  // namespace

void reading_text(const std::string& text, const PanelState& state) { text_in(state.reading, text); }
void strong_text(const std::string& text, const PanelState& state) { text_in(state.reading_strong, text); }

bool answer_button(int number, const std::string& text, Sign sign, bool open, PanelState& state) {
  ImGui::PushFont(state.reading);
  const float width = ImGui::GetContentRegionAvail().x, pad = em(0.55F), mark = em(1.7F);
  const std::string lines = wrapped(text, width - mark - 2.0F * pad);
  const ImVec2 size = ImGui::CalcTextSize(lines.c_str());
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImGui::PushID(number);
  const bool quiet = !open && sign == Sign::none;
  if (!open) {
    for (const ImGuiCol color : {ImGuiCol_ButtonHovered, ImGuiCol_ButtonActive}) {
      ImGui::PushStyleColor(color, ImGui::GetStyleColorVec4(ImGuiCol_Button));
    }
  }
  const bool pressed = ImGui::Button("##answer", {width, size.y + 2.0F * pad});
  if (!open) ImGui::PopStyleColor(2);
  ImGui::PopID();
  ImDrawList& canvas = *ImGui::GetWindowDrawList();
  const ImVec2 high = ImGui::GetItemRectMax();
  const ImU32 ink = ImGui::GetColorU32(quiet ? ImGuiCol_TextDisabled : ImGuiCol_Text);
  if (sign == Sign::none) {
    canvas.AddText({at.x + pad, at.y + pad}, ImGui::GetColorU32(ImGuiCol_TextDisabled),
                   fmt::format("{}", number).c_str());
  } else {
    draw_sign(sign, {at.x + pad + em(0.4F), at.y + pad + em(0.52F)}, em(0.8F));
    canvas.AddRect(at, high, ink_of(sign), ImGui::GetStyle().FrameRounding, 0, em(0.1F));
  }
  canvas.AddText(nullptr, 0.0F, {at.x + pad + mark, at.y + pad}, ink, lines.c_str());
  ImGui::PopFont();
  return pressed;
}

bool main_button(const char* name, const ImVec2& size) {
  const ImVec4 accent = ImGui::GetStyleColorVec4(ImGuiCol_CheckMark);
  const auto shade = [&](float times) { return ImVec4{accent.x * times, accent.y * times, accent.z * times, 1.0F}; };
  const bool light = accent.x < 0.1F;  // the accent of the dark window is bright
  ImGui::PushStyleColor(ImGuiCol_Button, accent);
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, shade(0.88F));
  ImGui::PushStyleColor(ImGuiCol_ButtonActive, shade(0.76F));
  ImGui::PushStyleColor(ImGuiCol_Text, light ? ImVec4{1.0F, 1.0F, 1.0F, 1.0F} : ImVec4{0.05F, 0.08F, 0.1F, 1.0F});
  const bool pressed = ImGui::Button(name, size);
  ImGui::PopStyleColor(4);
  return pressed;
}

void signed_words(Sign sign, const std::string& words, const PanelState& state) {
  ImGui::PushFont(state.reading_strong);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  draw_sign(sign, {at.x + em(0.5F), at.y + em(0.52F)}, em(0.8F));
  ImGui::SetCursorPosX(ImGui::GetCursorPosX() + em(1.4F));
  ImGui::TextUnformatted(words.c_str());
  ImGui::PopFont();
}

void step_line(std::size_t step, std::size_t steps) {
  const float width = ImGui::GetContentRegionAvail().x, gap = em(0.25F), high = em(0.22F);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float part = (width - gap * static_cast<float>(steps - 1)) / static_cast<float>(steps);
  for (std::size_t i = 0; i < steps; ++i) {
    const float x = at.x + static_cast<float>(i) * (part + gap);
    ImGui::GetWindowDrawList()->AddRectFilled({x, at.y}, {x + part, at.y + high},
                                              ImGui::GetColorU32(i <= step ? ImGuiCol_CheckMark : ImGuiCol_Border),
                                              0.5F * high);
  }
  ImGui::Dummy({width, high});
}

void figure_table(const Workbench& bench, const PanelState& state) {
  const LessonRun& run = *bench.lesson();
  const LaidPair laid = laid_pair(run);
  const bool inch = bench.active()->stage.view.units == Units::inch;
  if (!ImGui::BeginTable("figures", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit)) return;
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableSetupColumn("First");
  ImGui::TableSetupColumn("Second");
  table_heads({"", "First", "Second"}, 1);
  for (const std::string& name : run.now().figures) {
    const FigureKind kind = figure_kind(name).value_or(FigureKind{});
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextWrapped("%s", kind.label.c_str());
    for (const LaidBuild& build : laid) {
      ImGui::TableNextColumn();
      std::optional<double> value;
      if (build.build != nullptr) value = figure_of(name, build);
      ImGui::PushFont(state.strong);
      right_text(value ? figure_text(kind, *value, inch) : "...");
      ImGui::PopFont();
    }
  }
  ImGui::EndTable();
}

}  // namespace laywright

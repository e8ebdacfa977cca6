// Letters and colours of the panels.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <imgui.h>

#include "scene/view.h"

namespace laywright {

struct Fonts {
  ImFont* plain = nullptr;
  ImFont* strong = nullptr;
  ImFont* reading = nullptr;  // of texts that are read from beginning to end
  ImFont* reading_strong = nullptr;
  ImFont* title = nullptr;
  ImFont* figure = nullptr;  // that is seen from afar
  bool missing = false;      // the system has none of those that are looked for
};

// Loads the letters at this scale (1: 15 px, reading 18, titles 23, figures 44) from the system; where it has none, those
// that come with Dear ImGui.
// Replaces all fonts of the context: to be called between frames.
[[nodiscard]] Fonts load_fonts(float scale);

// Colours and sizes of everything in the panels.
void apply_style(Theme theme, float scale);

// Of a text that tells of a mistake, of a doubt, and of something of less weight.
[[nodiscard]] ImVec4 error_color(Theme theme);
[[nodiscard]] ImVec4 warning_color(Theme theme);
[[nodiscard]] ImVec4 quiet_color();

[[nodiscard]] inline ImVec4 color_of(const Rgba& c, float opacity = 1.0F) {
  return {static_cast<float>(c.r) / 255.0F, static_cast<float>(c.g) / 255.0F, static_cast<float>(c.b) / 255.0F,
          opacity * static_cast<float>(c.a) / 255.0F};
}

// One paragraph in lines of the current letters, broken at spaces only, unlike by ImGui::TextWrapped, which breaks a
// figure behind its point; a unit stays with its figure.
[[nodiscard]] std::string wrapped(std::string_view text, float width);
void wrapped_text(const std::string& text);

// In a table: figures under each other, and the heads of their columns over them.
void right_text(const std::string& text, bool quiet = false);
// All columns' heads, those from `first_number` on as of figures; `tips`, where given, one for each. `sortable`: a
// click on one sorts.
void table_heads(const std::vector<const char*>& names, int first_number, const std::vector<const char*>& tips = {},
                 bool sortable = false);

// Of one line.
[[nodiscard]] inline float width_of(const std::string& text) { return ImGui::CalcTextSize(text.c_str()).x; }

// A multiple of the letters' height: sizes given in it scale with everything else.
[[nodiscard]] inline float em(float times) { return times * ImGui::GetFontSize(); }

}  // namespace laywright

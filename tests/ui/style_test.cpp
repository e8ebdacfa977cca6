// Colours on which words stand, and lines of words.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "ui/headless.h"
#include "ui/style.h"

using namespace laywright;

namespace {

ImVec4 over(const ImVec4& upper, const ImVec4& lower) {
  const float t = upper.w;
  return {t * upper.x + (1 - t) * lower.x, t * upper.y + (1 - t) * lower.y, t * upper.z + (1 - t) * lower.z, 1.0F};
}

// Relative luminance and contrast as the Web Content Accessibility Guidelines 2.1 define them.
double luminance(const ImVec4& color) {
  const auto linear = [](double c) { return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(color.x) + 0.7152 * linear(color.y) + 0.0722 * linear(color.z);
}

double contrast(const ImVec4& one, const ImVec4& other) {
  const double a = luminance(one), b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

}  // namespace

TEST_CASE("the words of a progress bar can be read on its full and on its empty part") {
  ImGui::CreateContext();
  for (const Theme theme : {Theme::light, Theme::dark}) {
    apply_style(theme, 1.0F);
    const ImVec4* colors = ImGui::GetStyle().Colors;
    // It stands in the menu bar, in dialogs and in the drawer.
    for (const ImGuiCol ground : {ImGuiCol_MenuBarBg, ImGuiCol_PopupBg, ImGuiCol_WindowBg}) {
      const ImVec4 empty = over(colors[ImGuiCol_FrameBg], colors[ground]);
      const ImVec4 full = over(colors[ImGuiCol_PlotHistogram], empty);
      CAPTURE(theme == Theme::dark, ground);
      CHECK(contrast(colors[ImGuiCol_Text], empty) > 4.5);
      CHECK(contrast(colors[ImGuiCol_Text], full) > 4.5);
      CHECK(contrast(full, empty) > 1.2);  // and how far it is can be seen
    }
  }
  ImGui::DestroyContext();
}

TEST_CASE("a line never ends between a figure and its unit, also where the unit ends what stands in brackets") {
  testing::Headless ui(400.0F, 300.0F);
  int broken = 0;
  ui.frames({0.0F, 0.0F}, {400.0F, 300.0F}, [&] {
    const float least = ImGui::CalcTextSize("piece 1 (16 km),").x;
    for (float width = least; width < 3.0F * least; width += 1.0F) {
      const std::string lines = wrapped("piece 1 (16 km), piece 6 (4 km), piece 12 (8.5 km).", width);
      CAPTURE(lines);
      for (const char* figure : {"(16\n", "(4\n", "(8.5\n"}) CHECK(lines.find(figure) == std::string::npos);
      broken += lines.find('\n') != std::string::npos ? 1 : 0;
    }
  });
  CHECK(broken > 100);
}

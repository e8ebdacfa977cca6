#include "ui/style.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstring>
#include <new>
#include <string_view>

#include "base/read_file.h"

namespace laywright {
namespace {

// Latin, Greek, and the signs that our texts use.
constexpr std::array<ImWchar, 11> letters_used{0x0020, 0x017F, 0x0391, 0x03C9, 0x2010, 0x2026,
                                               0x2190, 0x2193, 0x2264, 0x2265, 0};

// As Debian places them; other systems keep them elsewhere, and have the letters of Dear ImGui then.
constexpr std::array<const char*, 2> plain_files{"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
                                                 "/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf"};
constexpr std::array<const char*, 2> strong_files{"/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf",
                                                  "/usr/share/fonts/truetype/noto/NotoSans-Bold.ttf"};

// The bytes of a file of letters; empty where there is none, or it holds something else: over that, Dear ImGui would end
// the program.
std::string font_in(const char* file) {
  constexpr std::size_t largest_bytes = 50'000'000;
  // How TrueType and OpenType files begin.
  constexpr std::array<std::string_view, 4> beginnings{std::string_view("\0\1\0\0", 4), "true", "OTTO", "ttcf"};
  const Result<std::string> read = read_file(file, "a font", largest_bytes);
  if (!read) return "";
  const std::string_view begins = std::string_view(read.value()).substr(0, 4);
  return std::find(beginnings.begin(), beginnings.end(), begins) == beginnings.end() ? "" : read.value();
}

template <std::size_t N>
ImFont* first_of(const std::array<const char*, N>& files, float size, bool& missing) {
  for (const char* file : files) {
    const std::string bytes = font_in(file);
    if (bytes.empty()) continue;
    void* const given = ImGui::MemAlloc(bytes.size());  // which releases it
    if (given == nullptr) throw std::bad_alloc();
    std::memcpy(given, bytes.data(), bytes.size());
    ImFontConfig config;
    config.OversampleH = 2;
    config.OversampleV = 1;
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(given, static_cast<int>(bytes.size()), size, &config,
                                                      letters_used.data());
  }
  missing = true;
  ImFontConfig config;
  config.SizePixels = size;
  return ImGui::GetIO().Fonts->AddFontDefault(&config);
}

ImVec4 grey(float level, float opacity = 1.0F) { return {level, level, level, opacity}; }

void set_light(std::array<ImVec4, ImGuiCol_COUNT>& c) {
  c[ImGuiCol_Text] = {0.13F, 0.15F, 0.18F, 1.0F};
  c[ImGuiCol_TextDisabled] = {0.40F, 0.43F, 0.47F, 1.0F};
  c[ImGuiCol_WindowBg] = c[ImGuiCol_MenuBarBg] = {0.957F, 0.961F, 0.966F, 1.0F};
  c[ImGuiCol_ChildBg] = {0.0F, 0.0F, 0.0F, 0.0F};
  c[ImGuiCol_PopupBg] = grey(1.0F);
  c[ImGuiCol_FrameBg] = grey(1.0F);
  c[ImGuiCol_FrameBgHovered] = {0.93F, 0.96F, 0.98F, 1.0F};
  c[ImGuiCol_FrameBgActive] = {0.88F, 0.93F, 0.97F, 1.0F};
  c[ImGuiCol_Border] = {0.78F, 0.80F, 0.83F, 1.0F};
  c[ImGuiCol_Button] = {0.895F, 0.91F, 0.925F, 1.0F};
  c[ImGuiCol_TableRowBgAlt] = {0.0F, 0.0F, 0.0F, 0.03F};
  c[ImGuiCol_TableHeaderBg] = {0.90F, 0.915F, 0.93F, 1.0F};
  c[ImGuiCol_ScrollbarGrab] = {0.74F, 0.77F, 0.80F, 1.0F};
}

void set_dark(std::array<ImVec4, ImGuiCol_COUNT>& c) {
  c[ImGuiCol_Text] = {0.90F, 0.91F, 0.92F, 1.0F};
  c[ImGuiCol_TextDisabled] = {0.60F, 0.63F, 0.67F, 1.0F};
  c[ImGuiCol_WindowBg] = c[ImGuiCol_MenuBarBg] = {0.125F, 0.137F, 0.153F, 1.0F};
  c[ImGuiCol_ChildBg] = {0.0F, 0.0F, 0.0F, 0.0F};
  c[ImGuiCol_PopupBg] = {0.155F, 0.168F, 0.187F, 1.0F};
  c[ImGuiCol_FrameBg] = {0.19F, 0.205F, 0.225F, 1.0F};
  c[ImGuiCol_FrameBgHovered] = {0.22F, 0.25F, 0.28F, 1.0F};
  c[ImGuiCol_FrameBgActive] = {0.22F, 0.29F, 0.35F, 1.0F};
  c[ImGuiCol_Border] = {0.29F, 0.31F, 0.34F, 1.0F};
  c[ImGuiCol_Button] = {0.235F, 0.255F, 0.28F, 1.0F};
  c[ImGuiCol_TableRowBgAlt] = {1.0F, 1.0F, 1.0F, 0.03F};
  c[ImGuiCol_TableHeaderBg] = {0.19F, 0.205F, 0.225F, 1.0F};
  c[ImGuiCol_ScrollbarGrab] = {0.36F, 0.38F, 0.41F, 1.0F};
}

bool fits(std::string_view words, float width) {
  return ImGui::CalcTextSize(words.data(), words.data() + words.size()).x <= width;
}

// A unit stays with its figure.
bool belongs_to(std::string_view line, std::string_view word) {
  word = word.substr(0, word.find_last_not_of("),.;:") + 1);
  return !line.empty() && std::isdigit(static_cast<unsigned char>(line.back())) != 0 && word.size() <= 3;
}

}  // namespace

Fonts load_fonts(float scale) {
  ImGui::GetIO().Fonts->Clear();
  const auto size = [scale](float px) { return std::round(px * scale); };
  Fonts fonts;
  fonts.plain = first_of(plain_files, size(15.0F), fonts.missing);
  fonts.strong = first_of(strong_files, size(15.0F), fonts.missing);
  fonts.reading = first_of(plain_files, size(18.0F), fonts.missing);
  fonts.reading_strong = first_of(strong_files, size(18.0F), fonts.missing);
  fonts.title = first_of(strong_files, size(23.0F), fonts.missing);
  fonts.figure = first_of(plain_files, size(44.0F), fonts.missing);
  return fonts;
}

void apply_style(Theme theme, float scale) {
  ImGuiStyle style;
  std::array<ImVec4, ImGuiCol_COUNT> colors;
  const bool light = theme == Theme::light;
  if (light) {
    ImGui::StyleColorsLight(&style);
  } else {
    ImGui::StyleColorsDark(&style);
  }
  std::copy_n(style.Colors, colors.size(), colors.begin());
  light ? set_light(colors) : set_dark(colors);
  // One accent for all that is chosen or under the pointer: the blue of the layers.
  const ImVec4 accent = light ? ImVec4{0.0F, 0.447F, 0.698F, 1.0F} : ImVec4{0.337F, 0.706F, 0.914F, 1.0F};
  const auto tint = [&](float opacity) { return ImVec4{accent.x, accent.y, accent.z, opacity}; };
  colors[ImGuiCol_CheckMark] = colors[ImGuiCol_SliderGrab] = colors[ImGuiCol_SliderGrabActive] = accent;
  colors[ImGuiCol_PlotLines] = accent;
  colors[ImGuiCol_PlotHistogram] = tint(0.40F);  // of progress bars: words stand on it
  colors[ImGuiCol_Header] = tint(0.18F);
  colors[ImGuiCol_HeaderHovered] = colors[ImGuiCol_ButtonHovered] = tint(0.26F);
  colors[ImGuiCol_HeaderActive] = colors[ImGuiCol_ButtonActive] = tint(0.40F);
  colors[ImGuiCol_Tab] = colors[ImGuiCol_TabUnfocused] = {0.0F, 0.0F, 0.0F, 0.0F};
  colors[ImGuiCol_TabActive] = colors[ImGuiCol_TabUnfocusedActive] = tint(0.24F);
  colors[ImGuiCol_TabHovered] = tint(0.34F);
  colors[ImGuiCol_TextSelectedBg] = tint(0.35F);
  colors[ImGuiCol_Separator] = colors[ImGuiCol_TableBorderLight] = colors[ImGuiCol_Border];
  colors[ImGuiCol_TableBorderStrong] = colors[ImGuiCol_Border];
  colors[ImGuiCol_TitleBg] = colors[ImGuiCol_TitleBgActive] = colors[ImGuiCol_TableHeaderBg];
  colors[ImGuiCol_ScrollbarBg] = {0.0F, 0.0F, 0.0F, 0.0F};
  std::copy(colors.begin(), colors.end(), style.Colors);

  style.WindowPadding = {10.0F, 8.0F};
  style.FramePadding = {7.0F, 4.0F};
  style.ItemSpacing = {8.0F, 6.0F};
  style.CellPadding = {6.0F, 3.0F};
  style.FrameRounding = style.GrabRounding = style.TabRounding = 3.0F;
  style.PopupRounding = 4.0F;
  style.WindowBorderSize = 0.0F;
  style.FrameBorderSize = light ? 1.0F : 0.0F;
  style.ScrollbarSize = 12.0F;
  style.GrabMinSize = 12.0F;
  style.ScaleAllSizes(scale);
  ImGui::GetStyle() = style;
}

ImVec4 error_color(Theme theme) {
  return theme == Theme::light ? ImVec4{0.72F, 0.16F, 0.08F, 1.0F} : ImVec4{1.0F, 0.55F, 0.42F, 1.0F};
}

ImVec4 warning_color(Theme theme) {
  return theme == Theme::light ? ImVec4{0.54F, 0.38F, 0.0F, 1.0F} : ImVec4{0.95F, 0.75F, 0.30F, 1.0F};
}

ImVec4 quiet_color() { return ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled); }

std::string wrapped(std::string_view text, float width) {
  std::string all;
  std::size_t begin = 0, end = 0;  // of the line
  while (end < text.size()) {
    std::size_t next = std::min(text.find(' ', end + 1), text.size());
    const std::string_view before = text.substr(begin, end - begin);
    if (end > begin && !fits(text.substr(begin, next - begin), width)) {
      std::size_t cut = end;
      if (belongs_to(before, text.substr(end + 1, next - end - 1)) && before.find(' ') != std::string_view::npos) {
        cut = begin + before.rfind(' ');
      }
      all += std::string(text.substr(begin, cut - begin)) + '\n';
      begin = cut + 1;
    }
    end = next;
  }
  return all.append(text.substr(begin));
}

void wrapped_text(const std::string& text) {
  ImGui::TextUnformatted(wrapped(text, ImGui::GetContentRegionAvail().x).c_str());
}

void right_text(const std::string& text, bool quiet) {
  const float room = ImGui::GetContentRegionAvail().x - ImGui::CalcTextSize(text.c_str()).x;
  if (room > 0.0F) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + room);
  quiet ? ImGui::TextDisabled("%s", text.c_str()) : ImGui::TextUnformatted(text.c_str());
}

void table_heads(const std::vector<const char*>& names, int first_number, const std::vector<const char*>& tips,
                 bool sortable) {
  ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
  for (int i = 0; i < static_cast<int>(names.size()); ++i) {
    if (!ImGui::TableSetColumnIndex(i)) continue;
    const char* name = names[static_cast<std::size_t>(i)];
    const float arrow = sortable ? em(0.65F) + ImGui::GetStyle().FramePadding.x : 0.0F;
    const float room = ImGui::GetContentRegionAvail().x - ImGui::CalcTextSize(name).x - arrow;
    if (i >= first_number && room > 0.0F) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + room);
    ImGui::PushID(i);
    ImGui::TableHeader(name);
    ImGui::PopID();
    const bool has_tip = !tips.empty() && *tips[static_cast<std::size_t>(i)] != '\0';
    if (has_tip && ImGui::IsItemHovered()) ImGui::SetTooltip("%s", tips[static_cast<std::size_t>(i)]);
  }
}

}  // namespace laywright

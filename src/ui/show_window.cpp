#include "ui/show_window.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "base/inch.h"
#include "base/quantity_text.h"
#include "scene/palette.h"
#include "session/show_commands.h"
#include "session/view_commands.h"
#include "ui/style.h"

namespace laywright {
namespace {

struct Counter {
  const char* name;
  std::string now, last;
};

std::string counted_diameter(double mm, Units units) {
  return amount_text(Amount::small_length, mm, 1, units == Units::inch);
}

std::vector<Counter> counters(const Showing& showing, const Wound& wound, Units units) {
  Showing full = showing;
  full.seconds = Showing::fill_s;
  const ShowFigures now = figures_of_showing(showing, wound), last = figures_of_showing(full, wound);
  std::vector<Counter> all{
      {"Length", counted_length(now.length_mm, last.length_mm, units),
       counted_length(last.length_mm, last.length_mm, units)},
      {"Turns", counted_turns(now.turns), counted_turns(last.turns)},
      {"Diameter", counted_diameter(now.diameter_mm, units), counted_diameter(last.diameter_mm, units)},
  };
  if (now.time_s) {
    all.push_back(
        {"Winding time", counted_time(*now.time_s, *last.time_s), counted_time(*last.time_s, *last.time_s)});
  }
  return all;
}

std::string details_of(const Wound& wound, Units units) {
  const Spool& spool = wound.plan().spool();
  const auto size = [&](double mm) { return short_size_text(mm, 3, units == Units::inch); };
  return fmt::format("Fiber {}.  Barrel {}, flange {}, width {}.  {}.", size(wound.plan().fiber().diameter_mm),
                     size(spool.barrel_diameter_mm), size(spool.flange_diameter_mm), size(spool.inside_width_mm),
                     counted(wound.build().strokes.size(), "layer"));
}

float text_width(ImFont* font, float size, const std::string& text) {
  return font->CalcTextSizeA(size, 1e6F, 0.0F, text.c_str()).x;
}

// Sizes that follow the window: as on a page, words are larger where there is more room.
struct Page {
  float width, height, margin, figure, headline, small;
};

Page page_of(const ImVec2& size, const PanelState& state) {
  const float unit = std::clamp(std::min(size.x / 1280.0F, size.y / 800.0F), 0.62F, 1.0F);
  return {size.x,
          size.y,
          std::floor(48.0F * unit * state.scale),
          std::floor(state.figure->FontSize * unit),
          std::floor(0.66F * state.figure->FontSize * unit),
          std::floor(state.reading->FontSize * std::max(unit, 0.8F))};
}

// Never wider than its column, all of one size.
float figure_size(const std::vector<Counter>& all, float column, float wanted, ImFont* font) {
  float widest = 1.0F;
  for (const Counter& counter : all) widest = std::max(widest, text_width(font, wanted, counter.last));
  return std::floor(wanted * std::min(1.0F, 0.9F * column / widest));
}

// Words have the picture's ground to themselves: the free fiber, which goes round the spool, ends where they begin.
void draw_ground(ImDrawList& canvas, const Page& page, Theme theme, float from, float to) {
  const ThemeColours colours = theme_colours(theme);
  // As the picture has it, from above to its foot.
  const auto at = [&](float y) {
    return ImGui::GetColorU32(color_of(mixed(colours.ground_top, colours.ground_foot, y / page.height)));
  };
  canvas.AddRectFilledMultiColor({0.0F, from}, {page.width, to}, at(from), at(from), at(to), at(to));
}

// The figures that count, side by side at the foot, and the line over them that tells how far it is filled.
struct FiguresBelow {
  std::vector<Counter> all;
  float room, column, size, foot, top, line;
};

FiguresBelow row_of(const Page& page, const Workbench& bench, const PanelState& state) {
  FiguresBelow row{counters(*bench.showing(), *bench.wound(), bench.active()->stage.view.units), 0, 0, 0, 0, 0, 0};
  row.room = page.width - 2.0F * page.margin;
  row.column = row.room / static_cast<float>(row.all.size());
  row.size = figure_size(row.all, row.column, page.figure, state.figure);
  row.foot = page.height - 0.8F * page.margin;
  row.top = row.foot - page.small - 0.25F * row.size - row.size;
  row.line = row.top - 0.5F * page.small;
  return row;
}

void draw_figures(ImDrawList& canvas, const Page& page, const Workbench& bench, const FiguresBelow& row,
                  const PanelState& state) {
  const auto& [all, room, column, size, foot, top, line] = row;
  const ImU32 ink = ImGui::GetColorU32(ImGuiCol_Text), quiet = ImGui::GetColorU32(ImGuiCol_TextDisabled);
  const float thick = std::max(1.0F, std::floor(0.1F * page.small));
  canvas.AddRectFilled({page.margin, line}, {page.margin + room, line + thick}, ImGui::GetColorU32(ImGuiCol_Border));
  const float filled = room * static_cast<float>(share_filled(*bench.showing()));
  canvas.AddRectFilled({page.margin, line}, {page.margin + filled, line + thick},
                       ImGui::GetColorU32(ImGuiCol_CheckMark));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const float x = page.margin + static_cast<float>(i) * column;
    canvas.AddText(state.figure, size, {x, top}, ink, all[i].now.c_str());
    canvas.AddText(state.reading, page.small, {x, foot - page.small}, quiet, all[i].name);
  }
}

void draw_headline(ImDrawList& canvas, const Page& page, const Workbench& bench, const PanelState& state) {
  const std::string title = bench.active()->document->title();
  const float room = page.width - 2.0F * page.margin;
  const float wide = text_width(state.figure, page.headline, title);
  const float size = std::floor(page.headline * std::clamp(room / std::max(1.0F, wide), 0.4F, 1.0F));
  const float top = 0.75F * page.margin;
  canvas.AddText(state.figure, size, {page.margin, top}, ImGui::GetColorU32(ImGuiCol_Text), title.c_str());
  if (!bench.showing()->details) return;
  const std::string details = details_of(*bench.wound(), bench.active()->stage.view.units);
  canvas.AddText(state.reading, page.small, {page.margin, top + size + 0.4F * page.small},
                 ImGui::GetColorU32(ImGuiCol_TextDisabled), details.c_str(), nullptr, room);
}

void tell_keys(PanelState& state) { state.show_keys_until = TypingState::Clock::now() + std::chrono::seconds(4); }

// For a moment at the beginning, after a key, and after the mouse was moved.
void draw_keys(ImDrawList& canvas, const Page& page, const Workbench& bench, PanelState& state) {
  const ImVec2 moved = ImGui::GetIO().MouseDelta;
  if (bench.showing()->seconds < 0.1 || moved.x != 0.0F || moved.y != 0.0F) tell_keys(state);
  if (state.show_keys_until && TypingState::Clock::now() > *state.show_keys_until) state.show_keys_until.reset();
  if (!state.show_keys_until) return;
  const bool paused = bench.showing()->paused;
  const std::string words = fmt::format("{}Esc leaves, Space {}, I tells sizes, F11 fills the screen",
                                        paused ? "Paused.  " : "", paused ? "goes on" : "pauses");
  ImFont* const font = ImGui::GetFont();
  const float size = ImGui::GetFontSize();
  const float width = text_width(font, size, words);
  const ImVec2 at{std::max(0.6F * size, page.width - page.margin - width), 0.35F * page.margin};
  canvas.AddText(font, size, at, ImGui::GetColorU32(ImGuiCol_TextDisabled), words.c_str());
}

}  // namespace

WindowLayout draw_show(const Workbench& bench, PanelState& state) {
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  ImDrawList& canvas = *ImGui::GetBackgroundDrawList();
  const Page page = page_of(size, state);
  const FiguresBelow row = row_of(page, bench, state);
  const Theme theme = bench.active()->stage.view.theme;
  draw_ground(canvas, page, theme, 0.0F, static_cast<float>(show_room.above) * page.height);
  draw_ground(canvas, page, theme, row.line, page.height);
  const float hidden = static_cast<float>(veil(*bench.showing()));
  const Rgba ground = theme_colours(theme).ground_top;
  if (hidden > 0.0F) canvas.AddRectFilled({0.0F, 0.0F}, size, ImGui::GetColorU32(color_of(ground, hidden)));
  draw_headline(canvas, page, bench, state);
  draw_figures(canvas, page, bench, row, state);
  draw_keys(canvas, page, bench, state);
  ImGui::SetMouseCursor(state.show_keys_until ? ImGuiMouseCursor_Arrow : ImGuiMouseCursor_None);
  WindowLayout layout;
  layout.picture = {0.0F, 0.0F, size.x, size.y};
  state.places.note("picture", layout.picture);
  return layout;
}

void show_key(std::string_view keys, PanelState& state, Commands& out) {
  if (keys == "Escape") out.push_back(cmd::leave_show());
  tell_keys(state);
  if (keys == "Space") out.push_back(cmd::pause_show());
  if (keys == "I") out.push_back(cmd::tell_sizes());
  if (keys == "L") out.push_back(cmd::toggle_theme());
  if (keys == "U") out.push_back(cmd::toggle_units());
  if (keys == "F11") state.changes_screen = true;
  if (keys == "F9") out.push_back(cmd::leave_show());
}

std::string counted_length(double mm, double last_mm, Units units) {
  if (units == Units::inch) return fmt::format("{} ft", counted_turns(mm / mm_per_foot));
  if (last_mm >= 1e6) return figure(mm / 1e6, 2) + " km";
  return amount_text(Amount::fiber_length, mm / 1e3, last_mm < 1e5 ? 1 : 0, false);
}

std::string counted_turns(double turns) { return figure(std::floor(turns + 1e-9), 0); }

std::string counted_time(double seconds, double last_s) {
  const auto whole = static_cast<long long>(std::llround(std::max(0.0, seconds)));
  if (last_s >= 3600.0) return fmt::format("{} h {:02} min", whole / 3600, whole % 3600 / 60);
  if (last_s >= 60.0) return fmt::format("{} min {:02} s", whole / 60, whole % 60);
  return fmt::format("{} s", whole);
}

}  // namespace laywright

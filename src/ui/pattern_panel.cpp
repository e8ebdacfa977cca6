// Patterns of a crossed wind: the ratio over diameter, ribbons beside it, and settings without.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/spelling.h"
#include "figures/both_units.h"
#include "figures/figures.h"
#include "figures/pattern_words.h"
#include "pattern/ribbon_bands.h"
#include "scene/palette.h"
#include "session/plan_commands.h"
#include "ui/advice_parts.h"
#include "ui/focus.h"
#include "ui/panels.h"
#include "ui/plot.h"
#include "ui/style.h"

namespace laywright {
namespace {

// More than a safe setting has behind its point in any unit: its step is a thousandth of a millimetre.
constexpr std::size_t setting_digits = 6;

// Of the plan as it is edited, whenever that changes.
void renew(const Workbench& bench, PatternState& pattern) {
  const Desk& desk = *bench.active();
  if (pattern.desk == desk.id && pattern.changes == desk.document->changes()) return;
  pattern.desk = desk.id;
  pattern.changes = desk.document->changes();
  pattern.table.reset();
  if (!desk.document->sound()) return;
  const Result<Plan> plan = check(desk.document->state().draft);
  if (!plan.ok()) return;
  pattern.table = patterns(plan.value(), usual_gap_d);
  pattern.d_mm = plan.value().fiber().diameter_mm;
}

std::string in_own_unit(const Workbench& bench, const std::string& path, double value_mm) {
  const std::vector<FieldRow>& rows = bench.rows();
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& each) { return each.path == path; });
  if (row == rows.end() || row->unit == nullptr) return size_text(value_mm, false);
  return format_quantity(value_mm, *row->unit, setting_digits);
}

const char* name_of(SafeSetting::What what) { return what == SafeSetting::What::pitch ? "Pitch" : "Right stop"; }

// "Pitch 19.933 mm".
std::string setting_words(const Workbench& bench, const PatternRow& row, const SafeSetting& safe) {
  return fmt::format("{} {}", name_of(safe.what), in_own_unit(bench, key_of(row, safe.what), safe.value_mm));
}

void safe_button(const Workbench& bench, const PatternRow& row, const SafeSetting& safe, PanelState& state,
                 Commands& out) {
  const std::string path = key_of(row, safe.what), value = in_own_unit(bench, path, safe.value_mm);
  const std::string label = setting_words(bench, row, safe);
  // Beside the last one, where there is room.
  const float width = ImGui::CalcTextSize(label.c_str()).x + 2.0F * ImGui::GetStyle().FramePadding.x;
  const float room = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x - ImGui::GetItemRectMax().x;
  if (&safe != &row.safe.front() && width + ImGui::GetStyle().ItemSpacing.x <= room) ImGui::SameLine();
  const Pattern& pattern = safe.pattern;
  const std::string tip = fmt::format(
      "Instead of {}: {} turns to each double stroke, which then lies {} d {}, beside the {}. The pattern is closed "
      "after {} double strokes. One undo takes it back.",
      in_own_unit(bench, path, safe.instead_of_mm), figure(pattern.ratio, 4),
      figure(std::abs(pattern.nearest.ahead_d), 2), pattern.nearest.ahead_mm > 0.0 ? "ahead" : "behind",
      pattern.nearest.starts == 1 ? "one before" : fmt::format("one {} before", pattern.nearest.starts),
      pattern.returns_after);
  command_button(bench, label.c_str(), cmd::type_field(path, value, 0), tip, out);
  state.places.note_item(fmt::format("pattern set {} {}", path, &safe - row.safe.data()));
}

void row_words(const Workbench& bench, const PatternRow& row, double gap_d, PanelState& state, Commands& out) {
  // Of an estimate.
  const auto across = [inch = bench.active()->stage.view.units == Units::inch](double mm) {
    return amount_text(Amount::small_length, mm, 1, inch);
  };
  ImGui::PushID(row.from_layer);
  ImGui::BeginGroup();
  heading(fmt::format("Layers {}: {}", layers_text(row), name_of(row.pattern.kind)), state);
  ImGui::EndGroup();
  state.places.note_item(fmt::format("pattern row {}", row.from_layer));
  if (row.reached && is_crossed(row)) {
    ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
    wrapped_text(fmt::format("{} turns to each double stroke, about {} to {} across", figure(row.pattern.ratio, 4),
                             across(row.inside_mm), across(row.outside_mm)));
    ImGui::PopStyleColor();
  }
  if (!row.safe.empty()) ImGui::TextUnformatted("Without ribbons, in a close pattern:");
  for (const SafeSetting& safe : row.safe) safe_button(bench, row, safe, state, out);
  wrapped_text(capitalised(pattern_words(row, gap_d)));
  const std::string none = no_pitch_words(row);
  if (!none.empty()) wrapped_text(none);
  ImGui::Spacing();
  ImGui::PopID();
}

Plot plot_of(const Workbench& bench, const PatternState& pattern) {
  // From a ratio up and down: a half and the next whole number are seen.
  constexpr double reach = 0.62;
  const View& view = bench.active()->stage.view;
  const bool inch = view.units == Units::inch;
  const auto size = [&](double mm) { return value_in(Amount::small_length, mm, inch); };
  Plot plot;
  plot.title = "Turns to a double stroke; ribbons filled";
  plot.x_name = fmt::format("diameter, {}", unit_in(Amount::small_length, inch));
  PlotLine line;
  line.name = "turns";
  line.color = ImGui::GetColorU32(color_of(hue_palette[view.theme == Theme::light ? 0 : 5]));
  const ImVec4 warning = warning_color(view.theme);
  const ImU32 filled = ImGui::GetColorU32({warning.x, warning.y, warning.z, 0.5F});
  double least = INFINITY, most = -INFINITY;
  for (const PatternRow& row : pattern.table->rows) {
    if (!row.reached || !is_crossed(row)) continue;
    least = std::min(least, row.pattern.ratio);
    most = std::max(most, row.pattern.ratio);
    for (const double diameter : {row.inside_mm, row.outside_mm}) {
      line.x.push_back(size(diameter));
      line.y.push_back(row.pattern.ratio);
      plot.notes.push_back(fmt::format("Layers {}: {}\n{} turns to each double stroke", layers_text(row),
                                       name_of(row.pattern.kind), figure(row.pattern.ratio, 4)));
    }
    for (const RibbonBand& band : ribbon_bands(row.cycle, pattern.d_mm, row.inside_mm, reach)) {
      plot.bands.push_back({fraction_text({band.starts, band.turns}), filled, size(row.inside_mm),
                            size(row.outside_mm), band.ratio - band.half_width, band.ratio + band.half_width});
    }
    for (const SafeSetting& safe : row.safe) {
      if (safe.what == SafeSetting::What::pitch)
        plot.bounds.push_back({fmt::format("pitch {}", in_own_unit(bench, key_of(row, safe.what), safe.value_mm)),
                               safe.pattern.ratio});
    }
  }
  // Whole numbers keep their names first; "46/3" is longer than "15".
  std::stable_sort(plot.bands.begin(), plot.bands.end(),
                   [](const PlotBand& a, const PlotBand& b) { return a.name.size() < b.name.size(); });
  plot.lines.push_back(std::move(line));
  plot.y_range = {least - reach, most + reach};
  return plot;
}

bool any_to_draw(const PatternTable& table) {
  return std::any_of(table.rows.begin(), table.rows.end(),
                     [](const PatternRow& row) { return row.reached && is_crossed(row); });
}

void settings_words(const Workbench& bench, PanelState& state, Commands& out) {
  const PatternTable& table = *state.pattern.table;
  if (table.stepped) return wrapped_text(stepped_words());
  for (const PatternRow& row : table.rows) row_words(bench, row, table.gap_d, state, out);
  if (!any_to_draw(table)) return;
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  wrapped_text(estimate_words(table));
  ImGui::PopStyleColor();
}

void curve(const Workbench& bench, float height, PanelState& state) {
  const Plot plot = plot_of(bench, state.pattern);
  const ImVec2 room{ImGui::GetContentRegionAvail().x, height};
  if (room.x < em(8.0F) || room.y < em(5.0F)) return;
  (void)draw_plot(plot, room, left_room(plot));
  state.places.note_item("pattern curve");
}

}  // namespace

void pattern_panel(const Workbench& bench, PanelState& state, Commands& out) {
  renew(bench, state.pattern);
  if (!state.pattern.table) {
    wrapped_text("The plan has errors: they stand beside its fields. Patterns are of a sound one.");
    return;
  }
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const bool draws = any_to_draw(*state.pattern.table), both = draws && room.x >= em(37.0F);
  ImGui::BeginChild("pattern words", {both ? 0.5F * room.x : 0.0F, 0.0F});
  take_keys_here("Pattern", false, state);
  settings_words(bench, state, out);
  if (draws && !both) curve(bench, em(12.0F), state);
  ImGui::EndChild();
  if (!both) return;
  ImGui::SameLine(0.0F, em(1.2F));
  ImGui::BeginChild("pattern curve", {0.0F, 0.0F}, false,
                    ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
  curve(bench, ImGui::GetContentRegionAvail().y, state);
  ImGui::EndChild();
}

}  // namespace laywright

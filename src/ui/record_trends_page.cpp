// How each machine goes from spool to spool: a control chart of one quantity, and what it says.
#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "records/trend_words.h"
#include "scene/palette.h"
#include "ui/advice_parts.h"
#include "ui/plot.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

ImU32 hue(std::size_t i) { return ImGui::GetColorU32(color_of(hue_palette[i])); }

std::string note_of(const Trend& trend, std::size_t i) {
  const std::string flags = flag_words(trend.chart.points[i]);
  return fmt::format("spool {} (record {}, {})\n{} {}{}", visible(trend.spools[i].spool), trend.spools[i].number,
                     trend.spools[i].date, charted(trend.chart.points[i].value), trend.quantity.unit,
                     flags.empty() ? "" : fmt::format("\n{}", flags));
}

Plot plot_of(const Trend& trend) {
  const ControlChart& chart = trend.chart;
  PlotLine values{"in control", hue(0), {}, {}}, odd{"out of control", hue(4), {}, {}};
  odd.joined = false;
  Plot plot;
  plot.title = trend_heading(trend);
  plot.x_name = "spools, in the order of time";
  double low = chart.lower, high = chart.upper;
  for (std::size_t i = 0; i < chart.points.size(); ++i) {
    const ControlPoint& point = chart.points[i];
    const bool flagged = !flag_words(point).empty();
    values.x.push_back(static_cast<double>(i + 1));
    values.y.push_back(point.value);
    values.dots.push_back(PlotDot::point);
    if (flagged) {
      odd.x.push_back(static_cast<double>(i + 1));
      odd.y.push_back(point.value);
      odd.dots.push_back(PlotDot::ring);
    }
    plot.notes.push_back(note_of(trend, i));
    low = std::min(low, point.value);
    high = std::max(high, point.value);
  }
  plot.lines.push_back(std::move(values));
  if (!odd.x.empty()) plot.lines.push_back(std::move(odd));
  if (chart.points.size() >= 2) {
    plot.bounds = {{fmt::format("mean {}", charted(chart.mean)), chart.mean},
                   {fmt::format("limits {}", charted(chart.lower)), chart.lower},
                   {fmt::format("and {}", charted(chart.upper)), chart.upper}};
  }
  const double slack = high > low ? 0.08 * (high - low) : 0.1 * std::max(1e-3, std::abs(high));
  plot.y_range = {low - slack, high + slack};
  return plot;
}

void points_table(const Trend& trend) {
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit |
                                    ImGuiTableFlags_ScrollY | ImGuiTableFlags_BordersInnerV;
  if (!ImGui::BeginTable("points", 6, flags, {0.0F, std::max(em(8.0F), ImGui::GetContentRegionAvail().y)})) return;
  const std::vector<const char*> heads{"Record", "Date", "Spool", "Value", "Moving range", ""};
  for (const char* head : heads) ImGui::TableSetupColumn(head, 0, em(*head == '\0' ? 16.0F : 6.5F));
  ImGui::TableSetupScrollFreeze(0, 1);
  table_heads(heads, 3);
  for (std::size_t i = 0; i < trend.spools.size(); ++i) {
    const ControlPoint& point = trend.chart.points[i];
    ImGui::TableNextRow();
    const std::array cells{fmt::format("{}", trend.spools[i].number), trend.spools[i].date,
                           visible(trend.spools[i].spool)};
    for (const std::string& cell : cells) {
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(cell.c_str());
    }
    ImGui::TableNextColumn();
    right_text(charted(point.value));
    ImGui::TableNextColumn();
    right_text(i == 0 ? "-" : short_figure(point.moving_range, 4));
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(flag_words(point).c_str());
  }
  ImGui::EndTable();
}

const Trend& chosen(const Trends& trends, RecordsState& own) {
  const auto found = std::find_if(trends.all.begin(), trends.all.end(),
                                  [&](const Trend& trend) { return trend_heading(trend) == own.trend; });
  if (found != trends.all.end()) return *found;
  // One that says something first.
  const auto odd = std::find_if(trends.all.begin(), trends.all.end(),
                                [](const Trend& trend) { return !trend.chart.in_control(); });
  const Trend& first = odd != trends.all.end() ? *odd : trends.all.front();
  own.trend = trend_heading(first);
  return first;
}

void choice(const Trends& trends, PanelState& state) {
  RecordsState& own = state.records;
  ImGui::SetNextItemWidth(std::min(ImGui::GetContentRegionAvail().x, em(40.0F)));
  const bool open = ImGui::BeginCombo("##trend", own.trend.c_str(), ImGuiComboFlags_HeightLarge);
  state.places.note_item("records trend");
  if (!open) return;
  for (std::size_t i = 0; i < trends.all.size(); ++i) {
    const std::string heading_words = trend_heading(trends.all[i]);
    const std::string words =
        trends.all[i].chart.in_control() ? heading_words : fmt::format("{} - out of control", heading_words);
    if (ImGui::Selectable(words.c_str(), own.trend == heading_words)) own.trend = heading_words;
    state.places.note_item(fmt::format("records trend {}", i));
  }
  ImGui::EndCombo();
}

void said_of(const Workbench& bench, const Trend& trend) {
  for (const std::string& line : limit_lines(trend)) coloured(quiet_color(), line);
  const bool fine = trend.chart.in_control();
  for (const std::string& line : control_lines(trend))
    fine ? wrapped_text(line) : coloured(warning_color(theme_of(bench)), line);
}

}  // namespace

void record_trends_page(const Workbench& bench, PanelState& state, Commands&) {
  ImGui::Spacing();
  const auto& seen = bench.records().seen();
  if (!seen) return coloured(quiet_color(), "Reading...");
  ImGui::BeginChild("trends", {0.0F, 0.0F}, false, ImGuiWindowFlags_NavFlattened);
  const Trends& trends = seen->trends;
  if (trends.all.empty()) {
    coloured(quiet_color(), nothing_to_watch);
  } else {
    const Trend& trend = chosen(trends, state.records);
    choice(trends, state);
    if (!trends.not_fitted.empty()) {
      ImGui::SameLine();
      ImGui::TextDisabled("(?)");
      if (ImGui::IsItemHovered())
        ImGui::SetTooltip(
            "%s", fmt::format("{}\nFit them on their pages, and {}", not_fitted_line(trends), then_watched).c_str());
    }
    ImGui::Spacing();
    const Plot plot = plot_of(trend);
    const ImVec2 room = ImGui::GetContentRegionAvail();
    static_cast<void>(draw_plot(plot, {room.x, std::max(em(13.0F), 0.52F * room.y)}, left_room(plot)));
    state.places.note_item("records chart");
    said_of(bench, trend);
    ImGui::Spacing();
    points_table(trend);
  }
  ImGui::EndChild();
}

}  // namespace laywright

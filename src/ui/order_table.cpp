#include "ui/order_table.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/spelling.h"
#include "session/order_commands.h"
#include "ui/advice_parts.h"
#include "ui/style.h"
#include "ui/verdict_sign.h"

namespace laywright {
namespace {

struct FigureColumn {
  const char *name, *tip;
  std::string BatchRow::*figure;
};

constexpr std::array figure_columns{
    FigureColumn{"Net", "Of delivered fiber", &BatchRow::net},
    FigureColumn{"Gross", "Wound: with leader, tail and samples", &BatchRow::gross},
    FigureColumn{"Splices", "On this spool", &BatchRow::splices},
    FigureColumn{"Turns", "Of the gross length", &BatchRow::turns},
    FigureColumn{"Diameter", "Greatest over the fiber, an estimate", &BatchRow::diameter},
    FigureColumn{"Clearance", "From the fiber to the rim, an estimate", &BatchRow::clearance},
    FigureColumn{"Fiber", "Of the gross length, before samples are cut off, an estimate", &BatchRow::fiber},
    FigureColumn{"Time", "Of winding at the plan's line speed, an estimate", &BatchRow::time},
};

// Words need their room, too: where there are no splices, nothing is said of them, and time and mass are told where it is
// wide.
std::vector<FigureColumn> columns_for(const Order& order, float room) {
  std::vector<FigureColumn> columns;
  for (const FigureColumn& column : figure_columns) {
    if (column.figure == &BatchRow::splices && order.splices == 0) continue;
    if (column.figure == &BatchRow::time && room < em(66.0F)) continue;
    if (column.figure == &BatchRow::fiber && room < em(72.0F)) continue;
    columns.push_back(column);
  }
  return columns;
}

const std::vector<BatchRow>& rows_of(const std::shared_ptr<const LaidOrder>& laid, bool inch, OrderState& own) {
  if (own.of.lock() == laid && own.inch == inch) return own.rows;
  own.of = laid;
  own.inch = inch;
  own.rows.clear();
  for (std::size_t i = 0; i < laid->batch.spools.size(); ++i) own.rows.push_back(spool_row(laid->batch, i, inch));
  own.rows.push_back(total_row(laid->batch, inch));
  return own.rows;
}

// Units below the names, as the command has them: the words beside get the room.
void heads(const std::vector<FigureColumn>& columns, bool inch) {
  const BatchRow units = batch_units(inch);
  // No row of headers: its words would not widen the columns.
  ImGui::TableNextRow();
  ImGui::TableSetBgColor(ImGuiTableBgTarget_RowBg0, ImGui::GetColorU32(ImGuiCol_TableHeaderBg));
  ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {ImGui::GetStyle().ItemSpacing.x, 0.0F});
  ImGui::TableNextColumn();
  ImGui::TextUnformatted("Spool");
  ImGui::TableNextColumn();
  ImGui::TextUnformatted("Takes");
  for (const FigureColumn& column : columns) {
    ImGui::TableNextColumn();
    ImGui::BeginGroup();
    right_text(column.name);
    right_text(units.*column.figure, true);
    ImGui::EndGroup();
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", column.tip);
  }
  ImGui::TableNextColumn();
  ImGui::TextUnformatted("Verdict");
  ImGui::TableNextColumn();
  ImGui::PopStyleVar();
}

void figures_of(const BatchRow& row, const std::vector<FigureColumn>& columns) {
  for (const FigureColumn& column : columns) {
    ImGui::TableNextColumn();
    right_text(row.*column.figure);
  }
}

void verdict_cell(const BatchRow& row, Theme theme) {
  ImGui::TableNextColumn();
  verdict_sign(row.grade, theme);
  wrapped_text(row.reason.empty() ? capitalised(row.verdict) : row.reason);
}

void open_button(const Workbench& bench, std::size_t spool, PanelState& state, Commands& out) {
  const std::optional<std::string> file = bench.order().written_plan(spool);
  ImGui::PushID(static_cast<int>(spool));
  if (command_button(bench, "Open plan", cmd::open_spool_plan(spool),
                     file ? fmt::format("Open {}.", *file)
                          : "Open the plan of this spool as a copy, which has no file until it is saved.",
                     out))
    ImGui::CloseCurrentPopup();
  state.places.note_item(fmt::format("order open {}", spool));
  ImGui::PopID();
}

}  // namespace

void spools_table(const Workbench& bench, float below, PanelState& state, Commands& out) {
  const std::shared_ptr<const LaidOrder>& laid = bench.order().laid();
  const bool inch = in_inches(bench);
  const std::vector<BatchRow>& rows = rows_of(laid, inch, state.order);
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const std::vector<FigureColumn> columns = columns_for(laid->batch.order, room.x);
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_ScrollY |
                                    ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerH |
                                    ImGuiTableFlags_BordersOuterH;
  const int count = static_cast<int>(columns.size()) + 4;
  if (!ImGui::BeginTable("spools", count, flags, {0.0F, std::max(room.y - below, em(9.0F))})) return;
  ImGui::TableSetupScrollFreeze(0, 1);
  ImGui::TableSetupColumn("spool");
  ImGui::TableSetupColumn("takes", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  for (const FigureColumn& column : columns) ImGui::TableSetupColumn(column.name);
  ImGui::TableSetupColumn("verdict", ImGuiTableColumnFlags_WidthStretch, 1.7F);
  ImGui::TableSetupColumn("open");
  heads(columns, inch);
  const Theme theme = theme_of(bench);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const BatchRow& row = rows[i];
    const bool is_total = i + 1 == rows.size();
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (is_total) ImGui::PushFont(state.strong);
    ImGui::TextUnformatted(capitalised(row.spool).c_str());
    ImGui::TableNextColumn();
    if (!is_total) wrapped_text(row.takes);
    figures_of(row, columns);
    verdict_cell(row, theme);
    if (is_total) ImGui::PopFont();
    ImGui::TableNextColumn();
    if (!is_total) open_button(bench, i, state, out);
  }
  ImGui::EndTable();
}

}  // namespace laywright

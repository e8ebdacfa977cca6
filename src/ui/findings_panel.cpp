#include <algorithm>
#include <cctype>
#include <numeric>

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "base/quantity_text.h"
#include "base/spelling.h"
#include "figures/verdict_text.h"
#include "measure/severity.h"
#include "scene/palette.h"
#include "session/scrub_commands.h"
#include "ui/catches_list.h"
#include "ui/cause_panel.h"
#include "ui/focus.h"
#include "ui/panels.h"
#include "ui/style.h"
#include "ui/texts.h"

namespace laywright {
namespace {

bool contains(const std::string& text, const std::string& part) {
  const auto same = [](char a, char b) {
    return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
  };
  return std::search(text.begin(), text.end(), part.begin(), part.end(), same) != text.end();
}

bool passes(const Finding& finding, const FindingsState& state) {
  if (state.kind && *state.kind != finding.kind) return false;
  return state.filter.empty() || contains(finding.text, state.filter) ||
         contains(spoken(name_of(finding.kind)), state.filter);
}

// Who looks for something finds it, large or small.
bool folds_small(const FindingsState& state) { return !state.small_ones && !state.kind && state.filter.empty(); }

// Indices into the findings, as the list shows them. A small one that is `chosen` is seen.
std::vector<std::size_t> chosen_and_sorted(const std::vector<Finding>& findings, const FindingsState& state,
                                           const std::optional<std::size_t>& chosen) {
  std::vector<std::size_t> order(findings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::erase_if(order, [&](std::size_t i) { return !passes(findings[i], state); });
  if (folds_small(state)) {
    std::erase_if(order, [&](std::size_t i) { return is_small(findings[i]) && chosen != i; });
  }
  const auto key = [&](std::size_t i) {
    const Finding& f = findings[i];
    switch (state.order) {
      case FindingOrder::kind: return static_cast<double>(f.kind);
      case FindingOrder::layer: return static_cast<double>(f.layer);
      case FindingOrder::turn: return f.turn;
      case FindingOrder::size: return f.size_d;
      case FindingOrder::gravity: break;
    }
    return static_cast<double>(i);
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return state.falling ? key(a) > key(b) : key(a) < key(b); });
  return order;
}

void sort_by_header(FindingsState& state) {
  ImGuiTableSortSpecs* specs = ImGui::TableGetSortSpecs();
  if (specs == nullptr || !specs->SpecsDirty) return;
  state.order = FindingOrder::gravity;
  state.falling = false;
  if (specs->SpecsCount > 0) {
    state.order = static_cast<FindingOrder>(specs->Specs[0].ColumnUserID);
    state.falling = specs->Specs[0].SortDirection == ImGuiSortDirection_Descending;
  }
  specs->SpecsDirty = false;
}

void filters(const std::vector<Finding>& findings, PanelState& panels) {
  FindingsState& state = panels.findings;
  ImGui::SetNextItemWidth(em(8.5F));
  if (ImGui::BeginCombo("##kind", state.kind ? spoken(name_of(*state.kind)).c_str() : "All kinds")) {
    if (ImGui::Selectable("All kinds", !state.kind)) state.kind.reset();
    for (int k = 0; k <= static_cast<int>(FindingKind::rim_overrun); ++k) {
      const auto kind = static_cast<FindingKind>(k);
      const auto count =
          std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.kind == kind; });
      if (count == 0) continue;
      if (ImGui::Selectable(fmt::format("{} ({})", spoken(name_of(kind)), count).c_str(), state.kind == kind)) {
        state.kind = kind;
      }
    }
    ImGui::EndCombo();
  }
  ImGui::SameLine();
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::InputTextWithHint("##filter", "words to look for", &state.filter);
  panels.places.note_item("findings filter");
  const auto small = std::count_if(findings.begin(), findings.end(), is_small);
  if (small == 0) return;
  ImGui::Checkbox(fmt::format("{}, too###small", counted(small, "small one")).c_str(), &state.small_ones);
  panels.places.note_item("small findings");
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", small_findings_words(findings).c_str());
}

void row(const Finding& finding, std::size_t index, bool chosen, Units units, PanelState& state, Commands& out) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::PushID(static_cast<int>(index));
  if (ImGui::Selectable("##row", chosen, ImGuiSelectableFlags_SpanAllColumns)) {
    out.push_back(cmd::fly_to_finding(index));
    keep_keys_in_list("Findings", state);
  }
  if (chosen) ImGui::SetItemDefaultFocus();
  state.places.note_item(fmt::format("finding {}", index));
  // By keys the text would hide the lines to come; Enter shows it below the list.
  if (ImGui::IsItemHovered() && !ImGui::GetIO().NavVisible) {
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(em(26.0F));
    ImGui::TextUnformatted(fmt::format("{}. {}", capitalised(name_of(finding.severity)), finding.text).c_str());
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
  }
  ImGui::SameLine(0.0F, 0.0F);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float side = em(0.62F), high = at.y + 0.5F * (ImGui::GetTextLineHeight() - side);
  ImGui::GetWindowDrawList()->AddRectFilled({at.x, high}, {at.x + side, high + side},
                                            ImGui::GetColorU32(color_of(finding_rgba(finding.kind))), em(0.12F));
  ImGui::SetCursorScreenPos({at.x + em(0.95F), at.y});
  ImGui::TextUnformatted(spoken(name_of(finding.kind)).c_str());
  ImGui::TableNextColumn();
  right_text(fmt::format("{}", finding.layer));
  ImGui::TableNextColumn();
  right_text(figure(finding.turn, 1));
  ImGui::TableNextColumn();
  right_text(figure(finding.size_d, 2));
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", size_text(finding.size_mm, units == Units::inch).c_str());
  ImGui::PopID();
}

// `below`: what is kept free.
void list(const std::vector<Finding>& findings, const View& view, float below, PanelState& state, Commands& out) {
  const std::vector<std::size_t> order = chosen_and_sorted(findings, state.findings, view.chosen_finding);
  if (order.empty()) {
    if (folds_small(state.findings)) {
      ImGui::TextWrapped("None that is grave or worth a look. Small: %s.", small_findings_words(findings).c_str());
    } else {
      ImGui::TextWrapped("No finding matches. Clear the filter to see all %zu.", findings.size());
    }
    return;
  }
  constexpr ImGuiTableFlags flags = ImGuiTableFlags_Sortable | ImGuiTableFlags_SortTristate | ImGuiTableFlags_RowBg |
                                    ImGuiTableFlags_ScrollY | ImGuiTableFlags_BordersOuterH |
                                    ImGuiTableFlags_SizingStretchProp;
  if (!ImGui::BeginTable("findings", 4, flags, {0.0F, -below - em(0.2F)})) return;
  take_keys_here("Findings", true, state);
  ImGui::TableSetupScrollFreeze(0, 1);
  const auto column = [](const char* name, float weight, FindingOrder by) {
    ImGui::TableSetupColumn(name, ImGuiTableColumnFlags_WidthStretch, weight, static_cast<ImGuiID>(by));
  };
  column("Kind", 2.2F, FindingOrder::kind);
  column("Layer", 1.25F, FindingOrder::layer);
  column("Turn", 1.2F, FindingOrder::turn);
  column("Size, d", 1.35F, FindingOrder::size);
  table_heads({"Kind", "Layer", "Turn", "Size, d"}, 1,
              {"What it is; click to sort", "The layer in which it lies", "The turn at which it begins",
               "In fiber diameters; hover a line for its length"},
              true);
  sort_by_header(state.findings);
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(order.size()));
  while (clipper.Step()) {
    for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
      const std::size_t index = order[static_cast<std::size_t>(i)];
      row(findings[index], index, view.chosen_finding == index, view.units, state, out);
    }
  }
  ImGui::EndTable();
}

}  // namespace

void findings_panel(const Workbench& bench, PanelState& state, Commands& out) {
  const WoundPtr wound = bench.wound_in_hand();
  if (!wound) {
    ImGui::TextWrapped("Findings stand here as soon as a plan is laid.");
    return;
  }
  const std::vector<Finding>& findings = wound->measurements().findings;
  const View& view = bench.stage_in_hand()->view;
  payoff_lines(*wound, state, out);
  if (findings.empty()) {
    ImGui::TextWrapped("Nothing was found: the turns lie side by side, the edges are even, the rim is clear.");
  } else {
    filters(findings, state);
    list(findings, view, cause_height(bench, ImGui::GetContentRegionAvail().y), state, out);
  }
  cause_panel(bench, state, out);
}

}  // namespace laywright

// What was wound and measured: where it is kept, and tabs for the list, a spool's page, the present spool and trends.
#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include "jobs/trouble.h"
#include "session/records_commands.h"
#include "session/window_commands.h"
#include "ui/advice_parts.h"
#include "ui/dialogs.h"
#include "ui/modal.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

float button_width(const char* words) {
  return ImGui::CalcTextSize(words).x + 2.0F * ImGui::GetStyle().FramePadding.x + ImGui::GetStyle().ItemSpacing.x;
}

void place_row(const Workbench& bench, PanelState& state, Commands& out) {
  RecordsState& own = state.records;
  const auto& seen = bench.records().seen();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Kept in");
  ImGui::SameLine();
  const bool changes = !own.place.empty();
  const float behind = (changes ? button_width("Use") : 0.0F) + button_width("Usual place") + button_width("Reload");
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - behind);
  const std::string hint = seen ? seen->place_words : "a file, or postgresql://NAME@HOST/DATABASE";
  const bool entered =
      ImGui::InputTextWithHint("##place", hint.c_str(), &own.place, ImGuiInputTextFlags_EnterReturnsTrue);
  state.places.note_item("records place");
  if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
    ImGui::SetTooltip(
        "%s", fmt::format("{}\nType another file, or postgresql://NAME@HOST/DATABASE, to go there.", hint).c_str());
  bool moves = entered && changes;
  if (changes) {
    ImGui::SameLine();
    moves |= ImGui::Button("Use");
    state.places.note_item("records use place");
  }
  if (moves) {
    out.push_back(cmd::move_records(own.place));
    own.place.clear();
  }
  ImGui::SameLine();
  command_button(bench, "Usual place", cmd::move_records(""),
                 "What LAYWRIGHT_RECORDS says, or else records.db in your data folder.", out);
  state.places.note_item("records usual place");
  ImGui::SameLine();
  command_button(bench, "Reload", cmd::reload_records(),
                 "Read anew (F5). What other windows add comes by itself, within three seconds.", out);
  state.places.note_item("records reload");
}

void trouble_line(const Workbench& bench, PanelState& state) {
  const auto& seen = bench.records().seen();
  if (!seen || seen->trouble.empty()) return;
  ImGui::BeginGroup();
  coloured(error_color(theme_of(bench)), trouble_words(seen->trouble));
  ImGui::EndGroup();
  state.places.note_item("records trouble");
}

void tabs(const Workbench& bench, PanelState& state, Commands& out) {
  RecordsState& own = state.records;
  if (!ImGui::BeginTabBar("records")) return;
  const auto tab = [&](const char* name, const std::string& words, const auto& page) {
    const bool wanted = own.wanted_tab == name;
    const bool open = ImGui::BeginTabItem(fmt::format("{}###{}", words, name).c_str(), nullptr,
                                          wanted ? ImGuiTabItemFlags_SetSelected : 0);
    state.places.note_item(fmt::format("records tab {}", name));
    if (!open) return;
    if (wanted) own.wanted_tab.clear();
    page(bench, state, out);
    ImGui::EndTabItem();
  };
  tab("list", "List", records_list);
  if (const long long number = bench.records().looked_at().number; number > 0)
    tab("page", fmt::format("Record {}", number), record_page);
  tab("keep", "This spool", keep_spool_page);
  tab("trends", "Trends", record_trends_page);
  ImGui::EndTabBar();
}

}  // namespace

void form_row(const char* label, const std::string& hint, std::string& text, const std::string& place,
              PanelState& state) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(label);
  ImGui::TableNextColumn();
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::PushID(label);
  ImGui::InputTextWithHint("##said", hint.c_str(), &text);
  ImGui::PopID();
  state.places.note_item(place);
}

void kept_line(const Workbench& bench, PanelState& state) {
  const auto& kept = bench.records().kept();
  if (bench.records().keeping()) {
    coloured(quiet_color(), "Writing...");
  } else if (kept && !kept->trouble.empty()) {
    coloured(error_color(theme_of(bench)), fmt::format("It was not kept: {}", trouble_words(kept->trouble)));
    state.places.note_item("records not kept");
  } else if (kept) {
    wrapped_text(kept->words);
    state.places.note_item("records kept");
  }
}

void records_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  if (!begin_modal("Records", 400.0F, 400.0F)) return;
  // A field that is typed into, or a list that is open, takes Escape for itself.
  const bool of_another = ImGui::IsAnyItemActive() || ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopupId);
  if (escape_pressed() && !of_another) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  place_row(bench, state, out);
  trouble_line(bench, state);
  ImGui::Spacing();
  ImGui::BeginChild("tabs", {0.0F, -ImGui::GetFrameHeight() - em(0.8F)}, false, ImGuiWindowFlags_NavFlattened);
  tabs(bench, state, out);
  ImGui::EndChild();
  ImGui::Spacing();
  if (ImGui::Button("Close")) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  state.places.note_item("records close");
  ImGui::SameLine(0.0F, em(1.2F));
  ImGui::BeginGroup();
  ImGui::AlignTextToFramePadding();
  kept_line(bench, state);
  ImGui::EndGroup();
  ImGui::EndPopup();
}

}  // namespace laywright

#include "ui/dialogs.h"

#include <array>
#include <utility>

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include "base/spelling.h"
#include "desk/field_help.h"
#include "figures/new_plan.h"
#include "session/new_plan_commands.h"
#include "session/window_commands.h"
#include "ui/advice_parts.h"
#include "ui/modal.h"
#include "ui/style.h"
#include "verdict/verdict_words.h"

namespace laywright {
namespace {

struct Said {
  const char* key;  // as issues of the request name it
  const char* name;
  const char* hint;
  std::string NewRequest::*what;
  std::optional<EntryKind> kind = std::nullopt;  // of catalogue entries that it may name
};

const std::array asked_for{
    Said{"spool", "Spool", "63 x 100 x 80 mm (barrel, flange, width), or a name", &NewRequest::spool,
         EntryKind::spool},
    Said{"fiber", "Fiber", "its diameter, 0.245 mm, or a name", &NewRequest::fiber, EntryKind::fiber},
    Said{"length", "Length", "3 km", &NewRequest::length},
    Said{"machine", "Machine", "a name, or nothing", &NewRequest::machine, EntryKind::machine},
    Said{"free_length", "Free length", "from guide to spool; else the machine's, or 50 mm",
         &NewRequest::free_length},
    Said{"friction", "Friction", "of the fiber on itself; else the fiber's, or 0.5", &NewRequest::friction},
    Said{"tension", "Tension", "or nothing", &NewRequest::tension},
    Said{"line_speed", "Line speed", "or nothing", &NewRequest::line_speed},
    Said{"title", "Title", "or nothing", &NewRequest::title},
};

std::string words_of(const Issue& issue) {
  return fmt::format("{}{}{}", issue.what, issue.allowed.empty() ? "" : "; allowed: ", issue.allowed);
}

// A list of what the catalogues have.
void choose(const Said& said, const Shelf& shelf, PanelState& state) {
  const std::string list = fmt::format("entries of {}", said.key);
  if (ImGui::Button("Choose")) ImGui::OpenPopup(list.c_str());
  state.places.note_item(fmt::format("new choose {}", said.key));
  ImGui::SetNextWindowSizeConstraints({em(24.0F), 0.0F}, {em(44.0F), em(24.0F)});
  if (!ImGui::BeginPopup(list.c_str())) return;
  const auto entries = shelf.of(*said.kind);
  if (entries.empty()) ImGui::TextDisabled("%s", fmt::format("No catalogue has a {}.", name_of(*said.kind)).c_str());
  for (const CatalogueEntry* entry : entries) {
    std::string& answer = state.new_plan.request.*said.what;
    if (ImGui::Selectable(entry->named.name.c_str(), answer == entry->named.name)) answer = entry->named.name;
    state.places.note_item(fmt::format("new entry {}", entry->named.name));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", entry->source.c_str());
  }
  ImGui::EndPopup();
}

// True where Enter was pressed in it.
bool said_row(const Said& said, const Issues& issues, Theme theme, PanelState& state) {
  NewPlanState& own = state.new_plan;
  ImGui::PushID(said.key);
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(said.name);
  ImGui::TableNextColumn();
  const bool lists = said.kind && own.shelf;
  const float behind =
      ImGui::CalcTextSize("Choose").x + 2.0F * ImGui::GetStyle().FramePadding.x + ImGui::GetStyle().ItemSpacing.x;
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - behind);
  const bool entered =
      ImGui::InputTextWithHint("##said", said.hint, &(own.request.*said.what), ImGuiInputTextFlags_EnterReturnsTrue);
  state.places.note_item(fmt::format("new {}", said.key));
  if (lists) {
    ImGui::SameLine();
    choose(said, *own.shelf, state);
  }
  for (const Issue& issue : issues) {
    if (issue.key == said.key) coloured(error_color(theme), words_of(issue));
  }
  ImGui::PopID();
  return entered;
}

// Of what has no row of its own.
void other_issues(const Issues& issues, Theme theme) {
  for (const Issue& issue : issues) {
    bool has_row = false;
    for (const Said& said : asked_for) has_row |= issue.key == said.key;
    if (!has_row) coloured(error_color(theme), fmt::format("{} {}", issue.key, words_of(issue)));
  }
}

void proposal(const ProposedPlan& found, Theme theme, PanelState& state) {
  const bool good = found.verdict.grade == Grade::good;
  heading(good ? "Proposed" : "No good wind was found; the best", state);
  if (ImGui::BeginTable("proposed", 2, ImGuiTableFlags_SizingFixedFit)) {
    for (const auto& [path, value] : proposed_settings(found.draft)) {
      ImGui::TableNextRow();
      ImGui::TableNextColumn();
      ImGui::TextDisabled("%s", capitalised(std::string(help_for(path).name)).c_str());
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(value.c_str());
    }
    ImGui::EndTable();
  }
  good ? wrapped_text(verdict_line(found.verdict)) : coloured(warning_color(theme), verdict_line(found.verdict));
  state.places.note_item("new verdict");
}

}  // namespace

void new_plan_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  if (!begin_modal("New plan", 44.0F, 39.0F)) return;
  NewPlanState& own = state.new_plan;
  const PlanBeginning& beginning = bench.beginning();
  const Theme theme = theme_of(bench);
  const bool appears = ImGui::IsWindowAppearing();
  if (appears) {
    own.asked.reset();
    own.shelf = bench.options().shelf ? std::optional(bench.options().shelf()) : std::nullopt;
  }
  // Flattened: the arrows go from what stands in it to the buttons below.
  ImGui::BeginChild("said", {0.0F, -ImGui::GetFrameHeight() - em(0.8F)}, false, ImGuiWindowFlags_NavFlattened);
  wrapped_text(
      "Say what is wound on what. Pitch, stops and reversal are proposed: the wind is laid and judged before, as "
      "several "
      "draws.");
  ImGui::Spacing();
  const bool of_this = own.asked == own.request;
  static const Issues none;
  const Issues& issues = of_this ? beginning.issues() : none;
  bool entered = false;
  if (ImGui::BeginTable("said", 2, ImGuiTableFlags_SizingFixedFit)) {
    ImGui::TableSetupColumn("name");
    ImGui::TableSetupColumn("said", ImGuiTableColumnFlags_WidthStretch);
    for (const Said& said : asked_for) {
      if (appears && &said == &asked_for.front()) ImGui::SetKeyboardFocusHere();
      entered |= said_row(said, issues, theme, state);
    }
    ImGui::EndTable();
  }
  if (own.shelf) other_issues(own.shelf->issues, theme);
  other_issues(issues, theme);
  ImGui::Spacing();
  const InquiryStatus status = beginning.status();
  const std::shared_ptr<const ProposedPlan> found = of_this && !status.busy ? beginning.proposed() : nullptr;
  if (of_this) inquiry_line(status, theme, "Laying and judging", "new", cmd::stop_proposing(), state, out);
  if (found) proposal(*found, theme, state);
  ImGui::EndChild();
  ImGui::Spacing();
  if (found) {
    const bool good = found->verdict.grade == Grade::good;
    if (ImGui::Button(good ? "Open it" : "Open it all the same")) {
      out.push_back(cmd::open_proposed());
      own = {};
      ImGui::CloseCurrentPopup();
    }
    if (good) ImGui::SetItemDefaultFocus();
    state.places.note_item("new open");
  } else {
    ImGui::BeginDisabled(of_this && status.busy);
    if (ImGui::Button("Propose") || entered) {
      own.asked = own.request;
      out.push_back(cmd::propose_plan(own.request));
    }
    ImGui::EndDisabled();
    state.places.note_item("new propose");
  }
  ImGui::SameLine();
  if (ImGui::Button("Cancel") || escape_pressed()) {
    if (status.busy) out.push_back(cmd::stop_proposing());
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  state.places.note_item("new cancel");
  ImGui::EndPopup();
}

}  // namespace laywright

// The present plan's spool, to be kept: what it is called, and what is said of it.
#include <algorithm>

#include <fmt/format.h>

#include "base/today.h"
#include "session/records_commands.h"
#include "ui/advice_parts.h"
#include "ui/records_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr const char* keep_place = "keep";

std::string hint_of(const std::string& of_plan, const char* else_words) {
  return of_plan.empty() ? else_words : fmt::format("{}, as the plan says", of_plan);
}

void names_table(const Plan& plan, PanelState& state) {
  RecordNames& names = state.records.names;
  if (!ImGui::BeginTable("names", 2, ImGuiTableFlags_SizingFixedFit,
                         {std::min(ImGui::GetContentRegionAvail().x, em(40.0F)), 0.0F}))
    return;
  ImGui::TableSetupColumn("name", 0, em(5.5F));
  ImGui::TableSetupColumn("said", ImGuiTableColumnFlags_WidthStretch);
  form_row("Spool", hint_of(plan.order().spool, "its number or name"), names.spool, "keep spool", state);
  form_row("Order", hint_of(plan.order().number, "its number, or nothing"), names.order, "keep order", state);
  form_row("Machine", hint_of(machine_of(plan), "its name, or nothing"), names.machine, "keep machine", state);
  form_row("Wound on", fmt::format("{}, today", today()), names.date, "keep date", state);
  ImGui::EndTable();
}

// Written: what was typed is of the spool before.
void settle_kept(const Workbench& bench, RecordsState& own) {
  if (!own.asked_to_keep || bench.records().keeping()) return;
  own.asked_to_keep = false;
  if (!bench.records().kept() || !bench.records().kept()->trouble.empty()) return;
  own.names = {};
  own.said = {};
  own.wanted_tab = "page";
}

}  // namespace

void keep_spool_page(const Workbench& bench, PanelState& state, Commands& out) {
  RecordsState& own = state.records;
  settle_kept(bench, own);
  ImGui::Spacing();
  const Desk* desk = bench.active();
  if (desk == nullptr) return coloured(quiet_color(), "No plan is open: open the one that was wound, with Ctrl+O.");
  const TakeupPtr run = bench.wound() ? bench.wound()->takeup() : nullptr;
  if (!desk->document->laid_in_full() || !run)
    return coloured(quiet_color(), "The plan is being laid, or not sound: what it gives is kept with the record.");
  if (own.desk != desk->id) {
    own.desk = desk->id;
    own.said.readings.clear();  // of another plan's layers
  }
  const Plan& plan = bench.wound()->plan();
  ImGui::BeginChild("keep", {0.0F, -ImGui::GetFrameHeightWithSpacing() - em(1.0F)}, false,
                    ImGuiWindowFlags_NavFlattened);
  wrapped_text(
      fmt::format("\"{}\" was wound: its plan, and what the build gives layer by layer, are kept with what you "
                  "say and read here. Grey is what it should be.",
                  desk->document->title()));
  ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
  wrapped_text("Measure on a spool that stands: mind the in-running nip and ends under tension.");
  ImGui::PopStyleColor();
  ImGui::Spacing();
  names_table(plan, state);
  spool_form(run->checkpoints, counter_of(plan), keep_place, own.said, state);
  ImGui::EndChild();
  ImGui::Spacing();
  if (command_button(bench, "Keep this spool", cmd::keep_spool(own.names, own.said),
                     "Adds a record; nothing in it is ever changed, what becomes known later is added.", out))
    own.asked_to_keep = true;
  state.places.note_item("keep now");
  take_over_button(bench, own.said, keep_place, state);
  ImGui::SameLine(0.0F, em(1.2F));
  ImGui::BeginGroup();
  ImGui::AlignTextToFramePadding();
  const std::string why = bench.why_not(cmd::keep_spool(own.names, own.said));
  if (!why.empty()) coloured(quiet_color(), why);
  ImGui::EndGroup();
}

}  // namespace laywright

#include "ui/dialogs.h"

#include <fmt/format.h>

#include "session/file_commands.h"
#include "session/window_commands.h"
#include "ui/focus.h"
#include "ui/modal.h"
#include "ui/style.h"

namespace laywright {
namespace {

// What has become of the last saving.
void outcome(const FileSaving& saving, Theme theme) {
  if (!saving.outcome) {
    ImGui::TextDisabled("Writing %s", saving.path.c_str());
    ImGui::ProgressBar(static_cast<float>(saving.share), {-1.0F, 0.0F});
  } else if (saving.stopped) {
    ImGui::TextWrapped("Stopped; nothing was written.");
  } else if (saving.outcome->empty()) {
    ImGui::TextWrapped("Saved as %s (%.1f MB)", saving.path.c_str(), static_cast<double>(saving.bytes) / 1e6);
  } else {
    ImGui::PushStyleColor(ImGuiCol_Text, error_color(theme));
    ImGui::TextWrapped("%s: %s", saving.path.c_str(), saving.outcome->front().what.c_str());
    ImGui::PopStyleColor();
  }
}

void buttons(bool busy, bool ready, PanelState& state, Commands& out) {
  if (busy) {
    if (ImGui::Button("Stop")) out.push_back(cmd::stop_saving_page());
    state.places.note_item("page stop");
  } else {
    ImGui::BeginDisabled(!ready);
    if (ImGui::Button("Save...")) {
      out.push_back(cmd::ask(cmd::Question::page_to_save));
      ImGui::CloseCurrentPopup();
    }
    ImGui::EndDisabled();
    state.places.note_item("page save");
  }
  ImGui::SameLine();
  if (ImGui::Button("Close") || escape_pressed()) {
    out.push_back(cmd::answered());
    ImGui::CloseCurrentPopup();
  }
  state.places.note_item("page close");
}

}  // namespace

void page_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  if (bench.active() == nullptr || !begin_modal("Share page", 34.0F, 15.0F)) return;
  if (ImGui::IsWindowAppearing()) take_keys_now();  // whatever opened it
  ImGui::TextWrapped(
      "One file that opens in any browser, also on a phone and without a network: the spool in the round, to turn, "
      "cut, peel and play, and to lay anew with other settings.");
  ImGui::Spacing();
  ImGui::TextWrapped("It holds the whole plan, with its notes and comments.");
  ImGui::Spacing();
  const std::optional<FileSaving> saving = bench.page_saving();
  const bool busy = saving && !saving->outcome;
  const std::string why = busy ? "" : bench.why_not(cmd::save_page("page.html"));
  if (!why.empty()) ImGui::TextWrapped("%s", why.c_str());
  if (saving) outcome(*saving, bench.active()->stage.view.theme);
  // They stay in their place, whatever is told above them.
  ImGui::SetCursorPosY(ImGui::GetWindowHeight() - ImGui::GetStyle().WindowPadding.y - ImGui::GetFrameHeight());
  buttons(busy, why.empty(), state, out);
  ImGui::EndPopup();
}

}  // namespace laywright

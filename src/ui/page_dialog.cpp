#include "ui/dialogs.h"

#include <utility>

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include "figures/figures.h"
#include "session/file_commands.h"
#include "session/window_commands.h"
#include "ui/advice_parts.h"
#include "ui/focus.h"
#include "ui/modal.h"
#include "ui/style.h"

namespace laywright {
namespace {

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
    ImGui::SetItemDefaultFocus();
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

void text_row(const char* name, const char* hint, std::string& value, PanelState& state) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(name);
  ImGui::SameLine(em(7.0F));
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::InputTextWithHint((std::string("##page ") + name).c_str(), hint, &value);
  state.places.note_item(std::string("page field ") + name);
}

// What a letter has; its issues below.
void letter_fields(PageChoices& choices, const Plan* plan, PanelState& state, Theme theme) {
  CustomerLetter& letter = choices.letter;
  const std::string title = plan == nullptr ? "" : title_of(*plan);
  text_row("Title", title.c_str(), letter.title, state);
  text_row("Customer",
           plan == nullptr || plan->order().customer.empty() ? "whom it is for" : plan->order().customer.c_str(),
           letter.customer, state);
  text_row("Sender", "who sends it", letter.sender, state);
  text_row("Greeting", "some sentences of your own", letter.greeting, state);
  text_row("Logo", "path of a PNG or a plain SVG, up to 2 MB", choices.logo, state);
  ImGui::Checkbox("Tell the verdict", &letter.verdict);
  state.places.note_item("page verdict");
  ImGui::SameLine();
  ImGui::Checkbox("Leave notes and comments in", &letter.notes);
  state.places.note_item("page notes");
  for (const Issue& issue : check_letter(letter)) {
    ImGui::PushStyleColor(ImGuiCol_Text, error_color(theme));
    ImGui::TextWrapped("%s (%s)", issue.what.c_str(), issue.allowed.c_str());
    ImGui::PopStyleColor();
  }
}

// The choices, and whether a page can be made of them.
bool choices_of_page(const Workbench& bench, PanelState& state, Commands& out) {
  PageChoices choices = bench.settings().page;
  const void* const document = bench.active()->document.get();
  // Of another plan, another letter.
  if (std::exchange(state.letter_of, document) != document)
    choices.letter.title = choices.letter.customer = choices.letter.greeting = "";
  if (ImGui::RadioButton("For those who wind", !choices.for_customer)) choices.for_customer = false;
  state.places.note_item("page for winder");
  ImGui::SameLine();
  if (ImGui::RadioButton("For a customer", choices.for_customer)) choices.for_customer = true;
  state.places.note_item("page for customer");
  ImGui::Spacing();
  if (choices.for_customer) {
    ImGui::TextWrapped(
        "How much the spool holds and how thick it is, in a buyer's words, with the margin; one page when it is "
        "printed. Without the plan's notes, comments, order and dials.");
    ImGui::Spacing();
    const WoundPtr wound = bench.wound();
    letter_fields(choices, wound ? &wound->plan() : nullptr, state, bench.active()->stage.view.theme);
  } else {
    ImGui::TextWrapped("It holds the whole plan, with its notes and comments.");
  }
  if (choices != bench.settings().page) out.push_back(cmd::choose_page(choices));
  return !choices.for_customer || check_letter(choices.letter).empty();
}

}  // namespace

void page_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  if (bench.active() == nullptr || !begin_modal("Share page", 34.0F, 27.0F)) return;
  if (ImGui::IsWindowAppearing()) take_keys_now();  // whatever opened it
  ImGui::TextWrapped(
      "One file that opens in any browser, also on a phone and without a network: the spool in the round, to turn, "
      "cut, peel and play, and to lay anew with other settings.");
  ImGui::Spacing();
  const bool fits = choices_of_page(bench, state, out);
  ImGui::Spacing();
  const std::optional<FileSaving> saving = bench.page_saving();
  const bool busy = saving && !saving->outcome;
  const std::string why = busy ? "" : bench.why_not(cmd::save_page("page.html"));
  if (!why.empty()) ImGui::TextWrapped("%s", why.c_str());
  if (saving) saving_line(*saving, bench.active()->stage.view.theme, "Saved as");
  // They stay in their place, whatever is told above them.
  ImGui::SetCursorPosY(ImGui::GetWindowHeight() - ImGui::GetStyle().WindowPadding.y - ImGui::GetFrameHeight());
  buttons(busy, fits && why.empty(), state, out);
  ImGui::EndPopup();
}

}  // namespace laywright

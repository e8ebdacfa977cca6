// An order over spools in the window.
#include "ui/dialogs.h"

#include <filesystem>

#include <fmt/format.h>

#include "answers/batch_words.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "session/order_commands.h"
#include "session/window_commands.h"
#include "ui/advice_parts.h"
#include "ui/focus.h"
#include "ui/modal.h"
#include "ui/order_table.h"
#include "ui/style.h"

namespace laywright {
namespace {

constexpr const char* order_place = "order";

void quiet(const std::string& text) { coloured(quiet_color(), text); }

// As the command tells it, by the name of the file.
void issues_of(Issues issues, Theme theme, PanelState& state) {
  for (std::size_t i = 0; i < issues.size(); ++i) {
    Issue& issue = issues[i];
    issue.file = std::filesystem::path(issue.file).filename().string();
    ImGui::BeginGroup();
    coloured(issue.severity == Severity::error ? error_color(theme) : warning_color(theme), to_text(issue));
    ImGui::EndGroup();
    state.places.note_item(fmt::format("order issue {}", i));
  }
}

void head(const OpenOrder& open, bool inch, PanelState& state) {
  const std::string file = visible(std::filesystem::path(open.file()).filename().string());
  heading(open.order() ? capitalised(order_name(*open.order())) : file, state);
  if (open.order() && !open.order()->title.empty()) wrapped_text(visible(open.order()->title));
  if (!open.laid()) return;
  const LaidOrder& laid = *open.laid();
  const bool placed = laid.not_placed.empty();
  if (placed) wrapped_text(batch_line(laid.batch, inch) + ".");
  std::string besides = besides_words(laid.batch.order, inch);
  for (const SpoolKind& kind : laid.batch.kinds) {
    if (kind.fits_mm > 0.0) besides += ' ' + room_words(kind, inch);
  }
  quiet(besides);
}

// What the figures are of, where they are not those of the command.
void standing(const OpenOrder& open, Theme theme, PanelState& state) {
  const InquiryStatus status = open.status();
  if (!open.laid() && status.stopped) quiet("Read it again, and it is laid anew.");
  if (open.laid() && !open.laid()->full) {
    ImGui::BeginGroup();
    coloured(warning_color(theme),
             status.busy ? "A quick look, with few stations: verdicts may still change. It is being laid in full."
                         : "A quick look, with few stations: verdicts may be others when it is laid in full.");
    ImGui::EndGroup();
    state.places.note_item("order quick");
  }
}

void body(const Workbench& bench, PanelState& state, Commands& out) {
  const OpenOrder& open = bench.order();
  const Theme theme = theme_of(bench);
  head(open, in_inches(bench), state);
  ImGui::Spacing();
  const std::shared_ptr<const LaidOrder>& laid = open.laid();
  const bool unsound = has_error(open.issues());
  if (unsound) heading("It cannot be laid as it stands", state);
  issues_of(open.issues(), theme, state);
  if (unsound) quiet("Mend this in an editor, save the file, and read it again.");
  inquiry_line(open.status(), theme, laid ? "Laying in full" : "A quick look", order_place, cmd::stop_laying_order(),
               state, out);
  standing(open, theme, state);
  if (!laid) return;
  if (!laid->not_placed.empty()) {
    heading("It cannot be delivered as it stands", state);
    return issues_of(laid->not_placed, theme, state);
  }
  const std::string estimate = estimate_words(laid->batch);
  const float words = ImGui::CalcTextSize(wrapped(estimate, ImGui::GetContentRegionAvail().x).c_str()).y;
  spools_table(bench, words + 2.0F * ImGui::GetStyle().ItemSpacing.y, state, out);
  quiet(estimate);
}

// True: the dialog is left.
bool buttons(const Workbench& bench, PanelState& state, Commands& out) {
  const OpenOrder& open = bench.order();
  bool leaves = false;
  if (open.is_writing()) {
    if (ImGui::Button("Stop writing")) out.push_back(cmd::stop_writing_order());
    state.places.note_item("order stop writing");
  } else {
    leaves |=
        command_button(bench, "Write everything...", cmd::ask(cmd::Question::order_folder),
                       "Plan and set-up sheet of each spool, and this table as CSV and PDF, into a folder.", out);
    state.places.note_item("order write");
    if (open.can_be_written()) ImGui::SetItemDefaultFocus();
  }
  ImGui::SameLine();
  command_button(bench, "Read again", cmd::lay_order_again(),
                 "Read the order's file and its plans once more, and lay it anew.", out);
  const bool is_to_be_mended =
      !open.status().busy && (has_error(open.issues()) || (open.laid() && !open.laid()->not_placed.empty()));
  if (is_to_be_mended) ImGui::SetItemDefaultFocus();
  state.places.note_item("order again");
  ImGui::SameLine();
  leaves |=
      command_button(bench, "Another order...", cmd::ask(cmd::Question::order_to_open), "Open another file.", out);
  state.places.note_item("order another");
  ImGui::SameLine();
  const char* const close = open.status().busy ? "Close, and go on laying" : "Close";
  if (ImGui::Button(close) || escape_pressed()) {
    out.push_back(cmd::answered());
    leaves = true;
  }
  if (!is_to_be_mended && (open.is_writing() || !open.can_be_written())) ImGui::SetItemDefaultFocus();
  state.places.note_item("order close");
  return leaves;
}

}  // namespace

void order_dialog(const Workbench& bench, PanelState& state, Commands& out) {
  const std::shared_ptr<const LaidOrder>& laid = bench.order().laid();
  const bool has_table = laid && laid->not_placed.empty();
  if (!begin_modal("Order over spools", 78.0F, has_table ? 46.0F : 22.0F)) return;
  if (ImGui::IsWindowAppearing()) take_keys_now();  // whatever opened it
  const std::optional<FileSaving> saving = bench.order().saving();
  const float line = ImGui::GetFrameHeightWithSpacing();
  const float below = ImGui::GetFrameHeight() + em(0.8F) + (saving ? (saving->outcome ? 1.0F : 2.0F) * line : 0.0F);
  // Flattened: the arrows go from what stands in it to the buttons below.
  ImGui::BeginChild("order", {0.0F, -below}, false, ImGuiWindowFlags_NavFlattened);
  body(bench, state, out);
  ImGui::EndChild();
  if (saving) saving_line(*saving, theme_of(bench), "Everything is written into");
  ImGui::Spacing();
  if (buttons(bench, state, out)) ImGui::CloseCurrentPopup();
  ImGui::EndPopup();
}

}  // namespace laywright

#include "ui/lesson_panel.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "session/command_rows.h"
#include "session/file_commands.h"
#include "session/lesson_commands.h"
#include "ui/lesson_parts.h"
#include "ui/style.h"

namespace laywright {
namespace {

float way_on_height() { return em(3.0F); }

std::optional<LessonTitle> next_lesson(const Workbench& bench) {
  for (const LessonTitle& title : bench.lessons().titles) {
    if (title.number > bench.lesson()->lesson->number) return title;
  }
  return std::nullopt;
}

bool inches(const Workbench& bench) { return bench.active()->stage.view.units == Units::inch; }

void space(float times) { ImGui::Dummy({1.0F, em(times)}); }

void heading(const Workbench& bench, PanelState& state, Commands& out) {
  const LessonRun& run = *bench.lesson();
  ImGui::AlignTextToFramePadding();
  ImGui::TextDisabled("Lesson %d, step %zu of %zu", run.lesson->number, run.step + 1, run.lesson->steps.size());
  const char* leave = "Leave";
  const float width = ImGui::CalcTextSize(leave).x + 2.0F * ImGui::GetStyle().FramePadding.x;
  ImGui::SameLine(ImGui::GetContentRegionMax().x - width);
  if (ImGui::Button(leave)) out.push_back(cmd::close_lesson());
  state.places.note_item("lesson leave");
  if (ImGui::IsItemHovered()) {
    ImGui::SetTooltip("%s", with_keys("Back to the plans that are open", cmd::close()).c_str());
  }
  step_line(run.step, run.lesson->steps.size());
  space(0.3F);
  ImGui::PushFont(state.title);
  ImGui::PushTextWrapPos(0.0F);
  ImGui::TextUnformatted(run.lesson->title.c_str());
  ImGui::PopTextWrapPos();
  ImGui::PopFont();
  if (run.step == 0) {
    ImGui::PushStyleColor(ImGuiCol_Text, quiet_color());
    reading_text(run.lesson->aim, state);
    ImGui::PopStyleColor();
  }
  space(0.2F);
}

void waiting(const Workbench& bench) {
  const LessonRun& run = *bench.lesson();
  if (run.as_given[0] && run.as_given[1] && !run.waits) return;
  std::string trouble;
  double share = 0.0;
  for (const Desk& desk : bench.documents()) {
    if (!desk.document->is_practice()) continue;
    const LayingStatus laying = desk.document->laying();
    share += 0.5 * (laying.busy ? (laying.pass.full() ? laying.share : 0.0) : 1.0);
    if (laying.stopped) trouble = "Laying was stopped: press F5 to go on.";
    if (!laying.trouble.empty()) trouble = laying.trouble;
  }
  if (trouble.empty()) {
    const std::string words = fmt::format("Both spools are being laid: {}", percent_text(share, 0));
    ImGui::ProgressBar(static_cast<float>(share), {-1.0F, 0.0F}, words.c_str());
    space(0.3F);
    return;
  }
  ImGui::PushTextWrapPos(0.0F);
  ImGui::TextDisabled("%s", trouble.c_str());
  ImGui::PopTextWrapPos();
}

void question(const Workbench& bench, PanelState& state, Commands& out) {
  const LessonRun& run = *bench.lesson();
  const Question& asked = *run.now().question;
  const std::optional<std::size_t> answer = run.answer();
  strong_text(asked.text, state);
  space(0.2F);
  for (std::size_t i = 0; i < asked.answers.size(); ++i) {
    Sign sign = Sign::none;
    if (answer && i == asked.right) sign = Sign::right;
    if (answer == i && i != asked.right) sign = Sign::wrong;
    if (answer_button(static_cast<int>(i) + 1, asked.answers[i], sign, !answer, state) && !answer) {
      out.push_back(cmd::answer_lesson(i));
    }
    state.places.note_item(fmt::format("lesson answer {}", i + 1));
  }
  if (!answer) {
    space(0.2F);
    ImGui::TextDisabled("Click what you think, or press its number.");
    return;
  }
  space(0.4F);
  const bool right = *answer == asked.right;
  signed_words(right ? Sign::right : Sign::wrong, right ? "Right." : "Not so.", state);
  reading_text(with_figures(asked.because, laid_pair(run), inches(bench)), state);
}

void page(const Workbench& bench, PanelState& state, Commands& out) {
  const LessonRun& run = *bench.lesson();
  const LessonStep& step = run.now();
  waiting(bench);
  if (!step.say.empty()) {
    reading_text(with_figures(step.say, laid_pair(run), inches(bench)), state);
    space(0.3F);
  }
  if (step.ruler) rulers(bench, state);
  if (step.question) question(bench, state, out);
  if (!step.figures.empty()) figure_table(bench, state);
  if (step.attempt) attempt_part(bench, state, out);
  const bool again = step.play || step.point, near = looks_from_near(run);
  if (again || near) space(0.3F);
  if (again) {
    if (ImGui::Button(step.play ? "Play it again" : "Show it again")) out.push_back(cmd::show_step_again());
    state.places.note_item("lesson again");
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("R");
  }
  if (!near) return;
  if (again) ImGui::SameLine();
  if (ImGui::Button(run.from_afar ? "From near" : "Whole spools"))
    out.push_back(cmd::look_from_afar(!run.from_afar));
  state.places.note_item("lesson afar");
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("O");
}

void way_on(const Workbench& bench, PanelState& state, Commands& out) {
  const LessonRun& run = *bench.lesson();
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  const float height = way_on_height() - em(0.5F);
  const float room = ImGui::GetContentRegionAvail().x;
  const float back = std::floor(0.32F * room);
  ImGui::PushFont(state.reading);
  ImGui::BeginDisabled(run.step == 0);
  if (ImGui::Button("Back", {back, height})) out.push_back(cmd::go_in_lesson(-1));
  ImGui::EndDisabled();
  state.places.note_item("lesson back");
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Backspace");
  ImGui::SameLine(0.0F, gap);
  const char* name = !run.last() ? "Next" : next_lesson(bench) ? "Next lesson" : "Finish";
  if (main_button(name, {room - back - gap, height})) out.push_back(on_from(bench));
  state.places.note_item("lesson next");
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("Enter");
  ImGui::PopFont();
}

}  // namespace

void lesson_panel(const Workbench& bench, PanelState& state, Commands& out) {
  heading(bench, state, out);
  const std::string name = fmt::format("page {}", bench.lesson()->step);  // each begins at its top
  ImGui::BeginChild(name.c_str(), {0.0F, -(way_on_height() + em(0.3F))}, false, ImGuiWindowFlags_NavFlattened);
  page(bench, state, out);
  ImGui::EndChild();
  ImGui::SetCursorPosY(ImGui::GetCursorPosY() + em(0.25F));
  way_on(bench, state, out);
}

Command on_from(const Workbench& bench) {
  if (!bench.lesson()->last()) return cmd::go_in_lesson(1);
  if (const auto next = next_lesson(bench)) return cmd::open_lesson(next->file);
  return cmd::close_lesson();
}

bool lesson_key(std::string_view keys, const Workbench& bench, PanelState& state, Commands& out) {
  const LessonStep& step = bench.lesson()->now();
  const bool digit = keys.size() == 1 && keys[0] >= '1' && keys[0] <= '9';
  if (digit && step.question) {
    const Command answer = cmd::answer_lesson(static_cast<std::size_t>(keys[0] - '1'));
    if (bench.why_not(answer).empty()) out.push_back(answer);
    return true;
  }
  if (!state.focus.panel.empty()) return false;
  if (keys == "Enter") {
    out.push_back(on_from(bench));
  } else if (keys == "Backspace") {
    if (bench.lesson()->step > 0) out.push_back(cmd::go_in_lesson(-1));
  } else if (keys == "R") {
    out.push_back(cmd::show_step_again());
  } else if (keys == "O") {
    const Command look = cmd::look_from_afar(!bench.lesson()->from_afar);
    if (bench.why_not(look).empty()) out.push_back(look);
  } else if (step.attempt && (keys == "Up" || keys == "Right" || keys == "Down" || keys == "Left")) {
    step_attempt(bench, keys == "Up" || keys == "Right" ? 1.0 : -1.0, state, out);
  } else {
    return false;
  }
  return true;
}

}  // namespace laywright

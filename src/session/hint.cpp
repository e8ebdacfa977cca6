// What to do when there is nothing to see, or not what one would expect.
#include <algorithm>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "desk/issue_words.h"
#include "lay/torsion.h"
#include "session/workbench.h"

namespace laywright {
namespace {

std::string first_error(const Issues& issues, const std::vector<FieldRow>& rows) {
  const auto found = std::find_if(issues.begin(), issues.end(),
                                  [](const Issue& issue) { return issue.severity == Severity::error; });
  if (found == issues.end()) return "";
  std::string words = issue_words(*found, rows);
  // "did you mean ...?" has its end.
  if (!words.ends_with('?') && !words.ends_with('.')) words += '.';
  return words;
}

std::string unsound(const Document& document, const std::vector<FieldRow>& rows) {
  const auto errors = std::count_if(document.issues().begin(), document.issues().end(),
                                    [](const Issue& issue) { return issue.severity == Severity::error; });
  const std::string first = first_error(document.issues(), rows);
  const std::string what =
      errors == 1 ? first
                  : fmt::format("{} {} more need{} your attention.", first, errors - 1, errors == 2 ? "s" : "");
  if (!document.wound()) return fmt::format("This plan cannot be laid yet. {}", what);
  return fmt::format("The picture shows the last plan that was sound. {}", what);
}

}  // namespace

std::string Workbench::hint() const {
  const Desk* desk = active();
  if (desk == nullptr) {
    return "No plan is open. Open one (Ctrl+O), drop the file of one on this window, or open the sample from the "
           "File "
           "menu.";
  }
  const Document& document = *desk->document;
  if (!document.sound()) return unsound(document, rows());
  const LayingStatus laying = document.laying();
  if (!laying.trouble.empty()) return laying.trouble;
  if (!document.wound()) {
    return laying.stopped ? "Laying was stopped. Lay the plan again (F5), or change it." : "The plan is being laid.";
  }
  if (laying.stopped) return "Laying was stopped before the full build was ready. Lay the plan again with F5.";
  if (!document.wound()->pass.whole()) {
    return fmt::format("A first look at the first {} of the wind; the rest is being laid.",
                       percent_text(document.wound()->pass.share, 0));
  }
  return "";
}

std::string Workbench::quick_look() const {
  const WoundPtr shown = wound();
  if (!shown || shown->pass.full()) return "";
  const Plan& plan = shown->plan();
  if (is_soft(plan, torsion_of(plan))) return "Quick look: heights are rough, and turns have not given way yet";
  return "Quick look: heights are rough";
}

}  // namespace laywright

#include "app/new_questions.h"

#include <fmt/format.h>

#include "app/output.h"
#include "app/questions.h"
#include "base/issue.h"
#include "base/readable.h"

namespace laywright {
namespace {

// Puts the answer to `what` into `value`, unless there is one. False: the person ended it.
bool ask_for(const std::string& what, const std::string& text, const std::string& help, const std::string& usual,
             bool may_be_empty, std::string& value, const Catalogues& catalogues) {
  if (!value.empty()) return true;
  TerminalQuestion question{text, help, usual, {}, may_be_empty};
  question.wrong = [&](const std::string& answer) {
    const auto issue = wrong_with(what, answer, catalogues);
    return issue ? fmt::format("{}{}{}", issue->what, issue->allowed.empty() ? "" : "; allowed: ", issue->allowed)
                 : "";
  };
  const std::optional<std::string> answer = ask(question);
  value = answer.value_or("");
  return answer.has_value();
}

bool says(const Catalogues& catalogues, EntryKind kind, const std::string& name, const std::string& path) {
  if (name.empty()) return false;
  const Result<NamedEntry> entry = catalogues.find(kind, name);
  return entry.ok() && entry.value().values.count(path) > 0;
}

}  // namespace

std::string entries_text(const Shelf& shelf, EntryKind kind) {
  std::string text, file;
  for (const CatalogueEntry* entry : shelf.of(kind)) {
    if (entry->named.file != file) text += fmt::format("  {}:\n", visible(entry->named.file));
    file = entry->named.file;
    text += fmt::format("    {:<26}  {}\n", visible(entry->named.name), visible(entry->source));
  }
  return text.empty() ? fmt::format("  no catalogue has a {}\n", name_of(kind)) : text;
}

bool ask_for_rest(NewRequest& request, const Catalogues& catalogues) {
  const Shelf shelf = catalogues.all();
  print_issues(shelf.issues);
  tell("A plan for a wind. ? lists what may be answered, Ctrl-D ends.\n");
  const auto list = [&](EntryKind kind, const char* or_else) { return entries_text(shelf, kind) + or_else; };
  if (!ask_for("spool", "Spool: a name, or barrel x flange x inside width",
               list(EntryKind::spool, "  or sizes, like 63 x 100 x 80 mm\n"), "", false, request.spool,
               catalogues) ||
      !ask_for("fiber", "Fiber: a name, or its diameter", list(EntryKind::fiber, "  or a diameter, like 0.245 mm\n"),
               "", false, request.fiber, catalogues) ||
      !ask_for("length", "Length", "  how much fiber, like 3 km or 5000 ft\n", "", false, request.length,
               catalogues) ||
      !ask_for("machine", "Machine: a name, or nothing", list(EntryKind::machine, ""), "", true, request.machine,
               catalogues))
    return false;
  if (!says(catalogues, EntryKind::machine, request.machine, "traverse.free_length") &&
      !ask_for("free_length", "Free length of fiber between guide and spool",
               "  from where the fiber leaves the guide to where it meets the spool\n",
               fmt::format("{} mm", usual_free_length_mm), false, request.free_length, catalogues))
    return false;
  if (says(catalogues, EntryKind::fiber, request.fiber, "fiber.friction")) return true;
  return ask_for("friction", "Friction of the fiber on itself",
                 "  the coefficient, or held for a fiber that never slips; the usual value is a guess\n",
                 fmt::format("{}", usual_friction), false, request.friction, catalogues);
}

}  // namespace laywright

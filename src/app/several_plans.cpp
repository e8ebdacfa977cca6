#include "app/several_plans.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "app/output.h"
#include "base/readable.h"
#include "paper/file_set.h"
#include "plan/plan_file.h"
#include "plan/plan_name.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

// One plan of several, and what became of it.
struct PlanOfSeveral {
  std::string file;
  std::optional<Plan> plan;
  CommandOutcome outcome;
  OfSeveral told;
};

// By which a file is known, whatever it is called.
std::string identity_of(const std::string& file) {
  std::error_code error;
  const fs::path path = fs::canonical(file, error);
  return error ? file : path.string();
}

// Each once; `again` hears of a name that leads to an earlier one's file.
template <class Again>
std::vector<std::string> distinct(const std::vector<std::string>& files, Again again) {
  std::vector<std::string> once;
  std::map<std::string, std::string> seen;
  for (const std::string& file : files) {
    const auto [first, is_new] = seen.try_emplace(identity_of(file), file);
    if (is_new) {
      once.push_back(file);
    } else {
      again(file, first->second);
    }
  }
  return once;
}

Issues clashes(const SeveralPlans& plans) {
  Issues issues;
  if (plans.folder.empty()) return issues;
  std::map<std::string, std::string> taken;
  for (const std::string& file : plans.files) {
    const auto [other, is_new] = taken.try_emplace(plan_name(file), file);
    if (is_new) continue;
    Issue issue;
    issue.file = file;
    issue.what = fmt::format(
        "its output would have the name of that of {} ({}{} in {}); make it in a run of its own, into "
        "another folder",
        other->second, other->first, plans.ending, plans.folder);
    issues.push_back(std::move(issue));
  }
  return issues;
}

}  // namespace

std::string reason_of(const Issues& issues) {
  const auto first = std::find_if(issues.begin(), issues.end(),
                                  [](const Issue& issue) { return issue.severity == Severity::error; });
  if (first == issues.end()) return "";
  const auto errors = std::count_if(issues.begin(), issues.end(),
                                    [](const Issue& issue) { return issue.severity == Severity::error; });
  std::string text;
  if (first->line > 0) text += fmt::format("line {}: ", first->line);
  if (!first->key.empty()) text += first->key + ": ";
  text += first->what;
  return errors > 1 ? fmt::format("{}; and {} more", text, errors - 1) : text;
}

namespace {

PlanOfSeveral read(const std::string& file, const EntrySource& entries) {
  PlanOfSeveral entry;
  entry.file = file;
  const Result<Plan> plan = load_plan(file, &entries);
  print_issues(plan.issues());
  entry.told.row.file = file;
  if (plan.ok()) {
    entry.plan = plan.value();
    return entry;
  }
  entry.outcome.code = exit_unsound;
  entry.told.row.verdict = "not sound";
  entry.told.row.reason = reason_of(plan.issues());
  return entry;
}

void note_failure(PlanOfSeveral& entry) {
  PlanRow& row = entry.told.row;
  if (entry.outcome.done() || entry.outcome.code == exit_stopped) return;
  row.file = entry.file;
  row.verdict = entry.outcome.code == exit_unsound ? "not laid" : "not written";
  row.reason = reason_of(entry.outcome.issues);
  row.line.clear();
  entry.told.document = nullptr;
}

// Works on the sound plans until it is stopped; how many of all are done with then.
std::size_t work_on(std::vector<PlanOfSeveral>& all, const SeveralPlans& plans, const MakeOfPlan& make) {
  Watch watch;
  for (std::size_t i = 0; i < all.size(); ++i) {
    PlanOfSeveral& entry = all[i];
    watch.begin_plan(static_cast<int>(i + 1), static_cast<int>(all.size()));
    if (entry.plan) entry.outcome = make(*entry.plan, plan_name(entry.file) + plans.ending, watch, entry.told);
    if (entry.outcome.code == exit_stopped || watch.progress().cancelled()) return entry.outcome.done() ? i + 1 : i;
    if (entry.plan) note_failure(entry);
  }
  return all.size();
}

std::string text_of(const std::vector<PlanOfSeveral>& all) {
  std::string text;
  std::vector<PlanRow> rows;
  for (const PlanOfSeveral& entry : all) {
    rows.push_back(entry.told.row);
    if (!entry.outcome.text.empty())
      text += fmt::format("== {} ==\n\n{}\n", visible(entry.file), entry.outcome.text);
  }
  return text + plan_table(rows);
}

std::string document_of(std::vector<PlanOfSeveral> all) {
  std::vector<PlanRow> rows;
  std::vector<nlohmann::ordered_json> documents;
  for (PlanOfSeveral& entry : all) {
    rows.push_back(std::move(entry.told.row));
    documents.push_back(std::move(entry.told.document));
  }
  return plans_json(rows, std::move(documents));
}

// That and how many are done, and that of no other anything was written.
void tell_stopped(const std::vector<PlanOfSeveral>& all, std::size_t done) {
  if (done == 0) return tell("stopped; nothing was written\n");
  tell(fmt::format("stopped after {} of {} plans; of the others nothing was written\n", done, all.size()));
}

}  // namespace

std::vector<std::string> named_once(const std::vector<std::string>& files) {
  return distinct(files, [](const std::string& again, const std::string& first) {
    const std::string as = first == again ? "" : fmt::format(", first as {}", visible(first));
    tell(fmt::format("{}: named twice{}; it is taken once\n", visible(again), as));
  });
}

CommandOutcome into_folder(const std::string& folder, const std::string& name,
                           const std::function<CommandOutcome(const WriteBytes&)>& work) {
  Result<FileSet> opened = FileSet::into(folder);
  if (!opened.ok()) return {exit_not_written, opened.issues(), {}};
  FileSet files = std::move(opened).value();
  return work([&](const std::string& bytes) {
    Issues trouble = files.add(name, bytes);
    return trouble.empty() ? files.commit() : trouble;
  });
}

std::vector<std::string> names_in_folder(const std::vector<std::string>& files, const std::string& ending) {
  const std::vector<std::string> plans = distinct(files, [](const auto&, const auto&) {});
  std::vector<std::string> names;
  if (plans.size() < 2) return names;
  for (const std::string& file : plans) names.push_back(plan_name(file) + ending);
  return names;
}

int make_of_several(const SeveralPlans& plans, const EntrySource& entries, const MakeOfPlan& make) {
  if (const Issues issues = clashes(plans); !issues.empty()) {
    print_issues(issues);
    return exit_command_line;
  }
  std::vector<PlanOfSeveral> all;
  for (const std::string& file : plans.files) all.push_back(read(file, entries));

  const std::size_t done = work_on(all, plans, make);
  const bool stopped = done < all.size();
  int worst = stopped ? exit_stopped : exit_done;
  for (std::size_t i = 0; i < done; ++i) {
    print_issues(all[i].outcome.issues);
    worst = std::max<int>(worst, all[i].outcome.code);
  }
  if (stopped) {
    tell_stopped(all, done);
    // Half a document would be taken for a whole one.
    if (done == 0 || plans.json) return worst;
    all.resize(done);
  }
  const bool printed = print(plans.json ? document_of(std::move(all)) : text_of(all));
  return printed ? worst : std::max<int>(worst, exit_not_written);
}

}  // namespace laywright

// A command that is given several plans: it does with each what it does with one, and ends with a table of all.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "app/command_outcome.h"
#include "app/watch.h"
#include "figures/plan_table.h"
#include "plan/lay_plan.h"

namespace laywright {

// What the table and the document tell of a plan; both as they are made until the plan's work fails.
struct OfSeveral {
  PlanRow row;
  nlohmann::ordered_json document = nullptr;
};

struct SeveralPlans {
  std::vector<std::string> files;
  std::string folder;  // where outputs go, each named after its plan; empty: there are none
  std::string ending;  // of these names: ".pdf", or "/" of folders
  bool json = false;   // one document on standard output in place of texts and table
};

// Takes a sound plan, and where its output goes (a name within the folder), and fills in the row.
using MakeOfPlan = std::function<CommandOutcome(const Plan&, const std::string& name, Watch&, OfSeveral&)>;

// The files in their order, each once, by whatever spelling or link it is named; tells which are named again.
[[nodiscard]] std::vector<std::string> named_once(const std::vector<std::string>& files);

// The first error, shortly, and how many more there are: all of them stand above the table. Empty where there is none.
[[nodiscard]] std::string reason_of(const Issues& issues);

// Reads all plans, tells their issues, and works on the sound ones, one after the other. Returns the worst exit code.
// Refuses, before anything is laid, two plans whose outputs would have one name. Stopped, it tells of those that are done.
[[nodiscard]] int make_of_several(const SeveralPlans& plans, const EntrySource& entries, const MakeOfPlan& make);

// Writes a file's bytes into its place: no issues, or why not.
using WriteBytes = std::function<Issues(const std::string& bytes)>;

// The work for one file of a folder, which is made where it is missing and proved to take a file before the work begins.
[[nodiscard]] CommandOutcome into_folder(const std::string& folder, const std::string& name,
                                         const std::function<CommandOutcome(const WriteBytes&)>& work);

// What an option that names an output writes into its folder; none where there is one plan.
[[nodiscard]] std::vector<std::string> names_in_folder(const std::vector<std::string>& files,
                                                       const std::string& ending);

}  // namespace laywright

#include "app/study_command.h"

#include <array>
#include <memory>
#include <new>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "answers/study_report.h"
#include "app/exit_code.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/study_options.h"
#include "app/watch.h"
#include "app/written_files.h"
#include "base/read_file.h"
#include "base/readable.h"
#include "paper/cairo_sink.h"
#include "paper/file_set.h"
#include "paper/study_map.h"
#include "plan/plan_file.h"

namespace laywright {
namespace {

Result<Study> load_study(const std::string& file) {
  constexpr std::size_t largest_study_bytes = 1'000'000'000;
  const Result<std::string> text = read_file(file, "a study, as --out or --json writes it", largest_study_bytes);
  if (!text) return text.issues();
  return study_from_json(text.value(), file);
}

Result<Study> merge_files(const std::vector<std::string>& files) {
  std::vector<Study> shards;
  for (const std::string& file : files) {
    Result<Study> shard = load_study(file);
    if (!shard.ok()) return shard.issues();
    shards.push_back(std::move(shard).value());
  }
  return merged(std::move(shards));
}

std::string shard_name(std::size_t index, std::size_t shards) {
  return fmt::format("study-{}-of-{}.json", index + 1, shards);
}

constexpr std::array study_names{"study.csv", "study.json", "study.svg", "study.png"};

std::vector<std::string> names_of_files(const StudyOptions& options) {
  std::size_t index = 0, shards = 1;
  if (read_shard(options.shard, index, shards) && shards > 1) return {shard_name(index, shards)};
  return {study_names.begin(), study_names.end()};
}

Issues add_files(FileSet& files, const Study& study, const StudyOptions& options) {
  if (options.shards > 1) return files.add(shard_name(options.shard_index, options.shards), study_json(study));
  const Drawing drawing = study_map(study);
  const std::array contents{study_csv(study), study_json(study), to_svg(drawing), to_png(drawing)};
  if (contents[2].empty() || contents[3].empty()) throw std::bad_alloc();
  Issues trouble;
  for (std::size_t i = 0; i < contents.size() && trouble.empty(); ++i)
    trouble = files.add(study_names[i], contents[i]);
  return trouble;
}

int write_and_print(const Study& study, const StudyOptions& options) {
  std::string text = options.json ? study_json(study) : study.complete() ? study_text(study) : "";
  if (!options.folder.empty()) {
    Result<FileSet> files = FileSet::into(options.folder);
    if (!files.ok()) {
      print_issues(files.issues());
      return exit_not_written;
    }
    FileSet set = std::move(files).value();
    Issues trouble = add_files(set, study, options);
    if (trouble.empty()) trouble = set.commit();
    print_issues(trouble);
    if (!trouble.empty()) return exit_not_written;
    if (!options.json) {
      text += fmt::format("\nWritten into {}\n ", visible(options.folder));
      for (const std::string& name : set.names()) text += ' ' + name;
      text += '\n';
    }
  }
  return print(text) ? exit_done : exit_not_written;
}

int lay_study(const StudyOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  const Result<StudySpec> spec = read_spec(plan.value().draft(), options);
  print_issues(spec.issues());
  if (!spec.ok()) return exit_command_line;
  std::optional<Watch> watch(std::in_place);
  watch->begin("laying");
  const Result<Study> study =
      run_study(plan.value(), spec.value(), options.shard_index, options.shards, options.threads, watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!study.ok()) return conclude(study.issues(), stopped);
  return write_and_print(study.value(), options);
}

int wrong(const char* what) {
  tell(fmt::format("error: {}\n", what));
  return exit_command_line;
}

int run(StudyOptions options, const EntrySource& entries) {
  if (!read_shard(options.shard, options.shard_index, options.shards)) {
    return wrong("--shard takes a part of a whole, like 2/5");
  }
  if (!options.merge.empty()) {
    if (!options.plan.empty()) return wrong("--merge takes the plan from the shards; leave PLAN out");
    const Result<Study> study = merge_files(options.merge);
    print_issues(study.issues());
    return study.ok() ? write_and_print(study.value(), options) : exit_unsound;
  }
  if (options.plan.empty()) return wrong("give a PLAN, or --merge with the shards of a study");
  if (options.shards > 1 && options.folder.empty() && !options.json) {
    return wrong("a shard goes into a folder (--out DIR) or to standard output (--json)");
  }
  return lay_study(options, entries);
}

void add_options(CommandLine command, StudyOptions& options) {
  options.lay.fidelity = search_fidelity;
  add_advice_options(command, options, "lay-study 1");
  const CommandOption plan = command.option("PLAN").required(false);
  command.add_option("--vary", options.axes, "A key over a range; give it twice for a map over two keys")
      .type_name("KEY=FROM:TO[:COUNT]");
  command
      .add_option("--tolerance", options.tolerances,
                  "A key that is off at random: half width, or one sigma with :normal; \"scatter\" alone is the "
                  "scatter from stroke to stroke. May be given several times")
      .type_name("KEY=SIZE[:normal]");
  command.add_flag("--own-tolerances", options.own_tolerances,
                   "Sample the plan's own: fiber.diameter_tolerance, and its scatter from stroke to stroke");
  command
      .add_option("--samples", options.samples, "Samples of tolerances; each is 2 builds, and 1 for each tolerance")
      .type_name("N")
      .check(number_between(2, 1'000'000))
      .capture_default_str();
  command
      .add_option("--over-end", options.end,
                  "Payoff among the figures is drawn over the left or the right end of a spool that stands, instead "
                  "of off the side of one that rolls; takes longer")
      .type_name("SIDE")
      .check(one_of({"left", "right"}));
  const CommandOption out = command
                                .add_option("--out", options.folder,
                                            "Write study.csv, study.json, study.svg and study.png into this folder")
                                .type_name("DIR");
  command.add_option("--shard", options.shard, "Lay only this part of the study, for many machines")
      .type_name("I/N")
      .capture_default_str();
  const CommandOption merge =
      command.add_option("--merge", options.merge, "Put the shards of a study together").type_name("FILES");
  guard_inputs(command, {plan, merge}, {{out, {}, false, [&options] { return names_of_files(options); }}});
}

}  // namespace

void add_study_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("study", "Lay a plan many times: maps over settings, and tolerances");
  const auto options = std::make_shared<StudyOptions>();
  add_options(command, *options);
  command.footer(
      "Examples:\n"
      "  laywright study samples/even.lay.toml --vary traverse.pitch=0.245mm:0.28mm:15 --out out/pitch\n"
      "  laywright study samples/even.lay.toml --vary traverse.left_stop=-0.3mm:0.3mm --vary\n"
      "      traverse.right_stop=-0.3mm:0.3mm --out out/stops\n"
      "  laywright study samples/even.lay.toml --tolerance fiber.diameter=0.01mm\n"
      "      --tolerance traverse.pitch=0.002mm:normal --samples 64 --out out/tolerances\n"
      "  parallel laywright study samples/even.lay.toml --vary traverse.pitch=0.245mm:0.28mm:100 \\\n"
      "      --threads 1 --shard {}/8 --out out/shards ::: $(seq 8)\n"
      "  laywright study --merge out/shards/*.json --out out/whole\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright

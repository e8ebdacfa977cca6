#include "app/improve_command.h"

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "advise/improve.h"
#include "advise/setting_text.h"
#include "answers/improve_report.h"
#include "app/advice_options.h"
#include "app/exit_code.h"
#include "app/number_option.h"
#include "app/output.h"
#include "app/ranges.h"
#include "app/watch.h"
#include "app/written_files.h"
#include "base/readable.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

namespace laywright {
namespace {

struct ImproveOptions : AdviceOptions {
  std::vector<std::string> ranges, steps, keep;
  std::string weights, out;
  int trials = 160, best = 3;
  bool drift = false;
};

SearchRequest& request_for(std::vector<SearchRequest>& requests, const std::string& path) {
  for (SearchRequest& each : requests) {
    if (each.path == path) return each;
  }
  requests.push_back({path, {}, {}, {}, false});
  return requests.back();
}

// "KEY=VALUE", cut at the sign; the second part is empty where there is none.
std::pair<std::string, std::string> cut_at(const std::string& text, char at) {
  const std::size_t place = text.find(at);
  if (place == std::string::npos) return {text, ""};
  return {text.substr(0, place), text.substr(place + 1)};
}

// "traverse.pitch=0.25mm:0.27mm"
Issues add_range(const PlanDraft& draft, const std::string& text, std::vector<SearchRequest>& requests) {
  const auto [key, range] = cut_at(text, '=');
  const auto [low, high] = cut_at(range, ':');
  const Result<double> from = read_setting(draft, key, low), to = read_setting(draft, key, high);
  if (!from.ok()) return from.issues();
  if (!to.ok()) return to.issues();
  SearchRequest& request = request_for(requests, key);
  request.low = from.value();
  request.high = to.value();
  return {};
}

Issues add_step(const PlanDraft& draft, const std::string& text, std::vector<SearchRequest>& requests) {
  const auto [key, step] = cut_at(text, '=');
  const Result<double> size = read_setting(draft, key, step);
  if (!size.ok()) return size.issues();
  request_for(requests, key).step = size.value();
  return {};
}

// "10:5:1"
Issues add_weights(const std::string& text, ImproveSettings& settings) {
  if (text.empty()) return {};
  const auto [gap, rest] = cut_at(text, ':');
  const auto [edge, rim] = cut_at(rest, ':');
  const auto g = read_number<double>(gap), e = read_number<double>(edge), r = read_number<double>(rim);
  if (!g || !e || !r || !(*g >= 0.0) || !(*e >= 0.0) || !(*r >= 0.0)) {
    return {option_issue("--weights", text, "is not three numbers, 0 or more, like 10:5:1")};
  }
  settings.weights = MeritWeights{*g, *e, *r};
  return {};
}

Issues read_requests(const PlanDraft& draft, const ImproveOptions& options, ImproveSettings& settings) {
  for (const std::string& each : options.ranges) {
    if (Issues trouble = add_range(draft, each, settings.requests); !trouble.empty()) return trouble;
  }
  for (const std::string& each : options.steps) {
    if (Issues trouble = add_step(draft, each, settings.requests); !trouble.empty()) return trouble;
  }
  for (const std::string& each : options.keep) request_for(settings.requests, each).keep = true;
  return add_weights(options.weights, settings);
}

int save(const Plan& plan, const Improvement& improvement, const ImproveOptions& options) {
  if (options.out.empty()) return exit_done;
  if (improvement.best.empty()) return exit_not_written;  // the report says why
  const Result<std::string> text = read_plan_text(options.plan);
  if (!text.ok()) {
    print_issues(text.issues());
    return exit_unsound;
  }
  const Result<std::string> saved =
      save_plan(options.out, text.value(), plan.asked(), improvement.best.front().draft);
  print_issues(saved.issues());
  return saved.ok() ? exit_done : exit_not_written;
}

int run(const ImproveOptions& options, const EntrySource& entries) {
  const Result<Plan> plan = load_plan(options.plan, &entries);
  print_issues(plan.issues());
  if (!plan.ok()) return exit_unsound;
  ImproveSettings settings;
  settings.lay = options.lay;
  settings.threads = options.threads;
  settings.trials = options.trials;
  settings.best = options.best;
  settings.drift = options.drift;
  const Issues trouble = read_requests(plan.value().draft(), options, settings);
  print_issues(trouble);
  if (!trouble.empty()) return exit_command_line;

  std::optional<Watch> watch(std::in_place);
  watch->begin("searching");
  const Result<Improvement> improvement = improve(plan.value(), settings, watch->progress());
  const bool stopped = watch->progress().cancelled();
  watch.reset();
  if (!improvement.ok()) {
    const int code = conclude(improvement.issues(), stopped);
    return stopped ? code : exit_command_line;  // what was wished cannot be followed
  }
  const bool leave_it = improvement.value().best.empty();
  const int code = save(plan.value(), improvement.value(), options);
  if (code != exit_done && !leave_it) return code;
  std::string text = options.json ? improve_json(plan.value(), improvement.value())
                                  : improve_text(plan.value(), improvement.value());
  if (!options.json && !options.out.empty()) {
    const std::string file = visible(options.out);
    text += leave_it ? fmt::format("\n{} was not written: nothing is better than the plan\n", file)
                     : fmt::format("\nProposal 1 was written into {}\n", file);
  }
  return print(text) ? code : exit_not_written;
}

void add_options(CommandLine command, ImproveOptions& options) {
  add_advice_options(command, options, "lay-improve 1");
  const CommandOption out =
      command
          .add_option("-o,--out", options.out, "Write the plan with the best settings, comments kept, to this file")
          .type_name("FILE.lay.toml");
  guard_inputs(command, {command.option("PLAN")}, {{out, {".toml"}}});
  command.add_option("--range", options.ranges, "Search this key within a range; may be given several times")
      .type_name("KEY=LOW:HIGH");
  command.add_option("--step", options.steps, "How finely the machine can set a key; may be given several times")
      .type_name("KEY=SIZE");
  command.add_option("--keep", options.keep, "Leave this key as it is; may be given several times").type_name("KEY");
  command.add_flag("--drift", options.drift,
                   "Let the stops move outward from layer to layer, as steps of the wind (as with tapered flanges)");
  command
      .add_option("--weights", options.weights,
                  "Among good winds: weights of gap length (per %), edge deviation (per d) and depth used (per %), "
                  "instead of room to the limits")
      .type_name("G:E:R");
  command.add_option("--trials", options.trials, "Builds of the search")
      .type_name("N")
      .check(number_between(8, 100'000))
      .capture_default_str();
  command.add_option("--best", options.best, "How many proposals are told")
      .type_name("N")
      .check(number_between(1, 6))
      .capture_default_str();
}

}  // namespace

void add_improve_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command = program.add_command("improve", "Search for better settings, and say what they cost");
  const auto options = std::make_shared<ImproveOptions>();
  add_options(command, *options);
  command.footer(
      "Best is what the verdict finds good, with most room to its limits, on average over several draws and\n"
      "winds in which each setting is a step off. Of settings that are good already it says so, and leaves\n"
      "them; then, and where nothing is better, -o writes nothing, and the exit code is 3.\n\n"
      "Examples:\n"
      "  laywright improve samples/long-dwell.lay.toml -o better.lay.toml\n"
      "  laywright improve samples/even.lay.toml --step traverse.pitch=0.005mm --keep traverse.left_stop\n"
      "  laywright improve samples/even.lay.toml --range \"traverse.free_length=50 mm:200 mm\"\n");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright

#include "app/order_command.h"

#include <filesystem>
#include <memory>
#include <new>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "answers/batch_report.h"
#include "app/build_picture.h"
#include "app/command_outcome.h"
#include "app/output.h"
#include "app/watch.h"
#include "app/wind_options.h"
#include "app/written_files.h"
#include "base/atomic_file.h"
#include "base/readable.h"
#include "base/spelling.h"
#include "order/batch.h"
#include "paper/batch_sheet.h"
#include "paper/cairo_sink.h"
#include "paper/fonts.h"
#include "paper/laid_order.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

struct OrderOptions {
  std::string order;
  bool json = false;
  std::string output, folder;
  LaySettings settings;
};

// Outputs that would take the place of what the order was made from.
Issues lost_by(const OrderOptions& options, const Batch& batch) {
  std::vector<fs::path> written;
  if (!options.output.empty()) written.emplace_back(options.output);
  if (!options.folder.empty())
    for (const std::string& name : batch_file_names(batch)) written.push_back(fs::path(options.folder) / name);
  return lost_sources(batch, written);
}

// On the threads that lay.
Bitmap picture_of(const LaidWind& laid, Progress& progress) {
  return picture_for_paper(SceneSource(laid.plan, laid.build, laid.measurements), progress);
}

Issues write_output(const Batch& batch, const std::string& drawn_on, const std::string& file) {
  if (ending_of(file) == ".csv") return write_file_atomically(file, batch_csv(batch));
  const std::string bytes = to_pdf(draw_batch_sheet(batch, drawn_on));
  if (bytes.empty()) throw std::bad_alloc();
  return write_file_atomically(file, bytes);
}

CommandOutcome deliver(const Order& order, std::vector<SpoolKind> kinds, const OrderOptions& options) {
  Watch watch;
  Progress& progress = watch.progress();
  // Before the work: a folder that cannot be written into should not cost a long wait.
  std::optional<FileSet> files;
  if (!options.folder.empty()) {
    Result<FileSet> opened = FileSet::into(options.folder);
    if (!opened.ok()) return {exit_not_written, opened.issues(), {}};
    files.emplace(std::move(opened).value());
  }

  watch.begin("laying");
  Issues lost;
  OrderLaying how;
  how.settings = options.settings;
  how.threads = threads_at_hand();
  how.draws_sheets = files.has_value();
  how.picture = picture_of;
  how.placed = [&](const Batch& placed) { return lost = lost_by(options, placed); };
  JobResult<LaidOrder> laid = lay_order(order, std::move(kinds), how, progress);
  if (laid.stopped()) return {exit_stopped, {}, {}};
  if (!lost.empty()) return {exit_command_line, lost, {}};
  if (!laid.done()) return {exit_unsound, laid.trouble(), {}};
  const auto& [batch, not_placed, full, sheets, drawn_on] = laid.value();
  if (!not_placed.empty()) return {exit_unsound, not_placed, {}};

  watch.begin("writing");
  Issues trouble;
  std::string text = options.json ? batch_json(batch) : batch_text(batch);
  if (files) {
    trouble = add_batch(*files, batch, sheets, drawn_on);
    if (progress.cancelled()) return {exit_stopped, {}, {}};
    if (trouble.empty()) trouble = files->commit();
    if (!options.json)
      text += fmt::format("\nWritten into {}\n  {}, {}, and of each spool its plan and set-up sheet, {} to {}\n",
                          visible(options.folder), batch_table, batch_sheet, name_of_spool(batch, 0),
                          name_of_spool(batch, batch.spools.size() - 1));
  }
  if (trouble.empty() && !options.output.empty()) trouble = write_output(batch, drawn_on, options.output);
  if (!trouble.empty()) return {exit_not_written, trouble, {}};
  return {exit_done, {}, std::move(text)};
}

int run(const OrderOptions& options, const EntrySource& entries) {
  const Result<Order> order = load_order(options.order);
  print_issues(order.issues());
  if (!order.ok()) return exit_unsound;
  Result<std::vector<SpoolKind>> kinds = kinds_of(order.value(), entries);
  print_issues(kinds.issues());
  if (!kinds.ok()) return exit_unsound;
  if (!options.folder.empty() || ending_of(options.output) == ".pdf") print_issues(missing_fonts());
  return conclude(deliver(order.value(), std::move(kinds).value(), options));
}

void add_options(CommandLine command, OrderOptions& options) {
  const CommandOption order =
      command.add_option("ORDER", options.order, "The order, *.order.toml").type_name("").required();
  command.add_flag("--json", options.json, "Print one JSON document (format \"lay-batch 1\") instead of text");
  const CommandOption output =
      command.add_option("-o,--output", options.output, "Write the batch, too: on paper, or as a table")
          .type_name("FILE.pdf|csv");
  const CommandOption out =
      command
          .add_option(
              "--out", options.folder,
              "Write the plan and the set-up sheet of each spool into this folder, and the batch as table and on "
              "paper; it is made where it is missing")
          .type_name("DIR");
  output.excludes(out);  // the folder has both
  guard_inputs(command, {order},
               {{output, {".pdf", ".csv"}, true}, {out, {}, false, [] {
                                                     return std::vector<std::string>{batch_table, batch_sheet};
                                                   }}});
  add_wind_options(command, options.settings);
}

}  // namespace

void add_order_command(CommandLine program, const EntrySource& entries, int& exit_code) {
  const CommandLine command =
      program.add_command("order", "Lengths over spools: which takes what, and a verdict for each");
  const auto options = std::make_shared<OrderOptions>();
  add_options(command, *options);
  command.footer(
      "How much a spool takes is found by laying its plan up to the plan's limits.rim_clearance. Where no splice "
      "is\n"
      "allowed, pieces stay whole; the spools are the fewest that do, which is certain for up to 14 pieces. Where "
      "splices\n"
      "are allowed, pieces are cut if that saves a spool. Each different wind is laid and judged once.\n\n"
      "Examples:\n"
      "  laywright order samples/sixty-km.order.toml\n"
      "  laywright order samples/sixty-km.order.toml --out out/sixty-km\n"
      "  laywright order samples/sixty-km.order.toml -o out/sixty-km.csv");
  command.callback([options, &entries, &exit_code] { exit_code = run(*options, entries); });
}

}  // namespace laywright

#include "session/file_commands.h"

#include <filesystem>
#include <utility>

#include <fmt/format.h>

#include "base/same_file.h"
#include "paper/sheet_file.h"
#include "session/bench_inside.h"
#include "session/command_rows.h"
#include "session/lesson_commands.h"
#include "session/order_commands.h"
#include "session/reasons.h"
#include "session/window_commands.h"

namespace laywright {
namespace {

// What is made of a plan never takes its place.
Issues replaces_plan(const BenchInside& in, const std::string& path) {
  if (!same_file(path, in.document().path())) return {};
  Issue issue;
  issue.file = path;
  issue.what = "is the plan's own file, which would be lost; choose another name";
  return {issue};
}

std::string nothing_to_save(const Workbench& bench) {
  const Document& document = *bench.active()->document;
  return document.dirty() || document.path().empty() ? "" : "There is nothing to save: the file is up to date.";
}

bool save_active(const BenchInside& in) {
  if (!in.document().path().empty()) return in.done_or_told("The plan was not saved.", in.document().save());
  in.question = cmd::Question::file_to_save;
  return true;
}

bool save_plan_as(const BenchInside& in, const std::string& path) {
  in.question.reset();
  std::error_code error;
  const std::filesystem::path full = std::filesystem::weakly_canonical(path, error);
  const std::filesystem::path file = error ? std::filesystem::path(path) : full;
  if (!in.done_or_told("The plan was not saved.", in.document().save_as(file))) return false;
  in.remember_file(file.string());
  return true;
}

std::string why_no_sheet(const Workbench& bench, const std::string& path, const cmd::SheetDrawings& pages,
                         int page) {
  if (!sheet_format_of(path))
    return "The file's ending says what is written: give it a name that ends in .pdf, .svg or .png.";
  const bool drawn = pages && page >= 1 && static_cast<std::size_t>(page) <= pages->size();
  if (!drawn) return "The sheet is not drawn yet: wait a moment.";
  const bool busy = bench.sheet_saving() && !bench.sheet_saving()->outcome;
  return busy ? "The sheet is still being written: wait a moment." : "";
}

bool page_is_made(const Workbench& bench) {
  const std::optional<FileSaving> saving = bench.page_saving();
  return saving && !saving->outcome;
}

std::string why_not_write_page(const Workbench& bench, const std::string& path) {
  if (std::string why = why_no_page(bench); !why.empty()) return why;
  if (!is_page_file(path)) return "A browser opens files that end in .html: give it such a name.";
  return page_is_made(bench) ? "A page is still being written: wait a moment, or stop it." : "";
}

bool write_page(const BenchInside& in, const std::string& path) {
  if (!in.done_or_told("The page was not saved.", replaces_plan(in, path))) return false;
  in.question = cmd::Question::share_page;
  return in.done_or_told("There is no page of a plan that is not sound.", in.write_page(path));
}

bool close_plan(const BenchInside& in, bool discard) {
  if (in.lesson) return cmd::close_lesson().act(in);
  if (in.document().dirty() && !discard) {
    in.question = cmd::Question::close_unsaved;
    return true;
  }
  in.question.reset();
  in.close(in.active);
  return true;
}

std::string why_no_offer(const Workbench& bench, std::size_t offer) {
  return offer < bench.recovery_offers().size() ? "" : "There is no such unsaved work.";
}

}  // namespace

Command cmd::open(const std::string& path) {
  return {{.name = "open " + path, .needs = Needs::nothing, .act = [path](const BenchInside& in) {
             in.question.reset();
             return in.open(path);
           }}};
}

Command cmd::open_sample() {
  return {{.name = "open the sample",
           .needs = Needs::nothing,
           .why_not =
               [](const Workbench& bench) {
                 return bench.options().sample.empty() ? "The program was started without its samples." : "";
               },
           .act = [](const BenchInside& in) { return in.open_sample(); }}};
}

Command cmd::activate(std::size_t document) {
  return {{.name = fmt::format("activate {}", document),
           .needs = Needs::nothing,
           .in_lesson = false,
           .why_not =
               [document](const Workbench& bench) {
                 return document < bench.documents().size() ? "" : reason::not_open;
               },
           .act = [document](const BenchInside& in) { in.active = document; }}};
}

Command cmd::save() {
  return {{.name = "save", .in_lesson = false, .why_not = nothing_to_save, .act = save_active}};
}

Command cmd::save_as(const std::string& path) {
  return {{.name = "save as " + path, .in_lesson = false, .act = [path](const BenchInside& in) {
             return save_plan_as(in, path);
           }}};
}

Command cmd::save_sheet(const std::string& path, const SheetDrawings& pages, int page) {
  return {{.name = fmt::format("save sheet {}", path),
           .why_not = [path, pages, page](const Workbench& bench) { return why_no_sheet(bench, path, pages, page); },
           .act =
               [path, pages, page](const BenchInside& in) {
                 if (!in.done_or_told("The sheet was not saved.", replaces_plan(in, path))) return false;
                 in.question = Question::setup_sheet;
                 in.write_sheet(path, pages, page);
                 return true;
               }}};
}

Command cmd::save_page(const std::string& path) {
  return {{.name = fmt::format("save page {}", path),
           .why_not = [path](const Workbench& bench) { return why_not_write_page(bench, path); },
           .act = [path](const BenchInside& in) { return write_page(in, path); }}};
}

Command cmd::choose_page(const PageChoices& choices) {
  return {{.name = "choose the page", .needs = Needs::nothing, .act = [choices](const BenchInside& in) {
             in.settings.page = choices;
           }}};
}

Command cmd::stop_saving_page() {
  return {{.name = "stop saving the page",
           .why_not = [](const Workbench& bench) { return page_is_made(bench) ? "" : "No page is being written."; },
           .act = [](const BenchInside& in) { in.stop_writing_page(); }}};
}

Command cmd::revert() {
  return {{.name = "revert", .in_lesson = false, .act = [](const BenchInside& in) {
             return in.done_or_told("The file could not be read again.", in.document().revert());
           }}};
}

Command cmd::keep_mine() {
  return {{.name = "keep mine",
           .why_not =
               [](const Workbench& bench) {
                 const bool same = bench.active()->document->on_disk() == OnDisk::same;
                 return same ? "Nobody else has changed the file." : "";
               },
           .act = [](const BenchInside& in) { in.document().keep_mine(); }}};
}

Command cmd::close(bool discard) {
  return {{.name = discard ? "close and discard" : "close",
           .act = [discard](const BenchInside& in) { return close_plan(in, discard); }}};
}

Command cmd::recover(std::size_t offer) {
  return {{.name = fmt::format("recover {}", offer),
           .needs = Needs::nothing,
           .why_not = [offer](const Workbench& bench) { return why_no_offer(bench, offer); },
           .act = [offer](const BenchInside& in) { return in.recover(offer); }}};
}

Command cmd::drop_recovery(std::size_t offer) {
  return {{.name = fmt::format("drop recovery {}", offer),
           .needs = Needs::nothing,
           .why_not = [offer](const Workbench& bench) { return why_no_offer(bench, offer); },
           .act = [offer](const BenchInside& in) { in.recovery.drop_offer(offer); }}};
}

CommandRows file_rows() {
  using namespace cmd;
  return {
      {"File", "New...", "Ctrl+N",
       "Begin a plan: say spool, fiber and length; settings for a good wind are proposed.",
       ask(cmd::Question::new_plan), Also::while_typing},
      {"File", "Open...", "Ctrl+O", "Open a lay plan.", ask(cmd::Question::file_to_open), Also::while_typing},
      {"File", "Open the sample", "", "Open the plan that comes with the program.", open_sample()},
      {"File", "Order...", "Ctrl+Shift+O",
       "Lay the lengths of an order over spools: which spool takes what, and a verdict for each.", show_order(),
       Also::while_typing},
      {"File", "Save", "Ctrl+S", "Save the plan; comments and order of its file stay.", save(), Also::while_typing},
      {"File", "Save as...", "Ctrl+Shift+S", "Save the plan to another file.", ask(cmd::Question::file_to_save)},
      {"File", "Set-up sheet...", "Ctrl+P", "See the sheet for the winder as it will print, and save it.",
       ask(cmd::Question::setup_sheet), Also::while_typing},
      {"File", "Share page...", "Ctrl+E", "Save the wind as one page that opens in any browser.",
       ask(cmd::Question::share_page), Also::while_typing},
      {"File", "Records...", "Ctrl+D",
       "What was wound and measured: list, pages, trends; keep this spool, or fit one.", ask(cmd::Question::records),
       Also::while_typing},
      {"File", "Revert", "Ctrl+Shift+R", "Go back to what the file says; can be undone.", revert()},
      {"File", "Keep mine", "", "Let a change that others made to the file be.", keep_mine()},
      {"File", "Close", "Ctrl+W", "Close the plan.", close()},
  };
}

}  // namespace laywright

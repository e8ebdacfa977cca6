// What commands change: the inside of a workbench. Workbench::apply makes one, and hands it to the command.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "session/advice.h"
#include "session/workbench.h"

namespace laywright {

struct BenchInside {
  Workbench& bench;

  std::vector<Desk>& desks = bench.desks_;
  std::size_t& active = bench.active_;
  std::optional<Comparison>& comparison = bench.comparison_;
  std::optional<LessonRun>& lesson = bench.lesson_;
  std::optional<Showing>& showing = bench.showing_;
  PlanBeginning& beginning = bench.beginning_;
  RecordsDesk& records = bench.records_;
  OpenOrder& order = bench.order_;
  std::optional<cmd::Question>& question = bench.question_;
  std::vector<Notice>& notices = bench.notices_;
  Settings& settings = bench.settings_;
  RecoveryStore& recovery = *bench.recovery_;

  // Preconditions of these: a plan is open; it is laid.
  [[nodiscard]] Desk& desk() const { return desks[active]; }
  [[nodiscard]] Document& document() const { return *desk().document; }
  [[nodiscard]] Advice& advice() const { return *desk().advice; }
  [[nodiscard]] const PlanState& state() const { return document().state(); }
  // Of the picture in hand.
  [[nodiscard]] Stage& stage() const { return bench.other_in_hand() ? comparison->stage : desk().stage; }
  [[nodiscard]] View& view() const { return stage().view; }
  [[nodiscard]] const Wound& wound() const { return *bench.wound_in_hand(); }

  bool open(const std::string& path) const {
    return bench.open(path);
  }  // a plan or a lesson; false: it was told why not
  bool open_sample() const { return bench.open_sample(); }
  bool open_proposed() const { return bench.open_proposed(); }
  void open_order(const std::string& file) const { bench.open_order(file); }
  bool open_spool_plan(std::size_t spool) const { return bench.open_spool_plan(spool); }
  void remember_file(const std::string& path) const { bench.remember_file(path); }
  void close(std::size_t document) const { bench.close(document); }
  [[nodiscard]] bool recover(std::size_t offer) const { return bench.recover(offer); }  // false: as open()

  void go_to_step(std::size_t step) const { bench.go_to_step(step); }
  void show_step_again() const { bench.show_step_again(); }
  void look_from_afar(bool afar) const { bench.look_from_afar(afar); }
  void close_lesson() const { bench.close_lesson(); }

  void write_sheet(const std::string& path, const std::shared_ptr<const std::vector<Drawing>>& pages,
                   int page) const {
    bench.write_sheet(path, pages, page);
  }
  [[nodiscard]] Issues write_page(const std::string& path) const { return bench.write_page(path); }
  void stop_writing_page() const { bench.page_writer_.stop(); }
  void forget_sheet_saving() const { bench.sheet_writer_.forget(); }
  void forget_page_saving() const { bench.page_writer_.forget(); }

  // Tells failures; true without issues.
  [[nodiscard]] bool done_or_told(const std::string& what, const Issues& issues) const {
    if (!issues.empty()) bench.tell_failure(what, issues);
    return issues.empty();
  }
};

// Precondition: a plan is open.
[[nodiscard]] inline const Document& document_of(const Workbench& bench) { return *bench.active()->document; }

}  // namespace laywright

#include "app/batch_files.h"

#include <new>
#include <utility>

#include "answers/batch_report.h"
#include "app/build_picture.h"
#include "paper/batch_sheet.h"
#include "paper/cairo_sink.h"
#include "paper/setup_sheet.h"
#include "plan/plan_name.h"

namespace laywright {
namespace {

std::string plan_file(const Batch& batch, std::size_t spool) { return name_of_spool(batch, spool) + plan_ending; }
std::string sheet_file(const Batch& batch, std::size_t spool) { return name_of_spool(batch, spool) + ".pdf"; }

// What could not be drawn is no empty file.
std::string drawn(const std::vector<Drawing>& pages) {
  std::string bytes = to_pdf(pages);
  if (bytes.empty()) throw std::bad_alloc();
  return bytes;
}

}  // namespace

std::vector<std::string> batch_file_names(const Batch& batch) {
  std::vector<std::string> names{batch_table, batch_sheet};
  for (std::size_t i = 0; i < batch.spools.size(); ++i) {
    names.push_back(plan_file(batch, i));
    names.push_back(sheet_file(batch, i));
  }
  return names;
}

SpoolSheets::SpoolSheets(const Batch& batch, std::string drawn_on)
    : batch_(batch), drawn_on_(std::move(drawn_on)), sheets_(batch.spools.size()) {}

Issues SpoolSheets::draw(std::size_t wind, const LaidWind& laid, Progress& progress) {
  const std::scoped_lock one_at_a_time(drawing_);
  Bitmap picture;
  if (laid.build->nodes.size() > 0)
    picture = picture_for_paper(SceneSource(laid.plan, laid.build, laid.measurements), progress);
  for (std::size_t i = 0; i < batch_.spools.size() && !progress.cancelled(); ++i) {
    if (batch_.spools[i].wind != wind) continue;
    const Result<Plan> plan = check(draft_of(batch_, i));
    if (!plan.ok()) return plan.issues();
    sheets_[i] = drawn(draw_setup_sheet(
        {plan.value(), *laid.build, *laid.measurements, laid.run, Paper::a4, picture, laid.verdict, drawn_on_}));
  }
  return {};
}

Issues SpoolSheets::add_to(FileSet& files) const {
  Issues trouble = files.add(batch_table, batch_csv(batch_));
  if (trouble.empty()) trouble = files.add(batch_sheet, drawn(draw_batch_sheet(batch_, drawn_on_)));
  for (std::size_t i = 0; i < batch_.spools.size() && trouble.empty(); ++i) {
    trouble = files.add(plan_file(batch_, i), plan_text_of(batch_, i));
    if (trouble.empty()) trouble = files.add(sheet_file(batch_, i), sheets_[i]);
  }
  return trouble;
}

}  // namespace laywright

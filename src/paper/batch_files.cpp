#include "paper/batch_files.h"

#include <new>
#include <utility>

#include "answers/batch_report.h"
#include "base/same_file.h"
#include "paper/batch_sheet.h"
#include "paper/cairo_sink.h"
#include "paper/setup_sheet.h"
#include "plan/plan_name.h"

namespace laywright {
namespace {

std::string sheet_file(const Batch& batch, std::size_t spool) { return name_of_spool(batch, spool) + ".pdf"; }

// What could not be drawn is no empty file.
std::string drawn(const std::vector<Drawing>& pages) {
  std::string bytes = to_pdf(pages);
  if (bytes.empty()) throw std::bad_alloc();
  return bytes;
}

}  // namespace

std::string batch_plan(const Batch& batch, std::size_t spool) { return name_of_spool(batch, spool) + plan_ending; }

std::vector<std::string> batch_file_names(const Batch& batch) {
  std::vector<std::string> names{batch_table, batch_sheet};
  for (std::size_t i = 0; i < batch.spools.size(); ++i) {
    names.push_back(batch_plan(batch, i));
    names.push_back(sheet_file(batch, i));
  }
  return names;
}

Issues lost_sources(const Batch& batch, const std::vector<std::filesystem::path>& written) {
  Issues issues;
  const auto tell = [&](const std::filesystem::path& file, const char* what) {
    Issue issue;
    issue.file = file.string();
    issue.what = what;
    issues.push_back(std::move(issue));
  };
  for (const std::filesystem::path& file : written) {
    if (same_file(file, batch.order.file))
      tell(file, "is the order itself, and would be lost; choose another folder or name");
    for (const SpoolKind& kind : batch.kinds) {
      if (!same_file(file, kind.path)) continue;
      tell(file, "is a plan of the order, and would be lost; choose another folder or name");
      break;
    }
  }
  return issues;
}

SpoolSheets::SpoolSheets(const Batch& batch, WindPicture picture, std::string drawn_on)
    : batch_(batch), picture_(std::move(picture)), drawn_on_(std::move(drawn_on)), sheets_(batch.spools.size()) {}

Issues SpoolSheets::draw(std::size_t wind, const LaidWind& laid, Progress& progress) {
  const std::scoped_lock one_at_a_time(drawing_);
  Bitmap picture;
  if (picture_ && laid.build->nodes.size() > 0) picture = picture_(laid, progress);
  for (std::size_t i = 0; i < batch_.spools.size() && !progress.cancelled(); ++i) {
    if (batch_.spools[i].wind != wind) continue;
    const Result<Plan> plan = check(draft_of(batch_, i));
    if (!plan.ok()) return plan.issues();
    sheets_[i] = drawn(draw_setup_sheet(
        {plan.value(), *laid.build, *laid.measurements, laid.run, Paper::a4, picture, laid.verdict, drawn_on_}));
  }
  return {};
}

Issues add_batch(FileSet& files, const Batch& batch, const std::vector<std::string>& sheets,
                 const std::string& drawn_on) {
  Issues trouble = files.add(batch_table, batch_csv(batch));
  if (trouble.empty()) trouble = files.add(batch_sheet, drawn(draw_batch_sheet(batch, drawn_on)));
  for (std::size_t i = 0; i < batch.spools.size() && trouble.empty(); ++i) {
    trouble = files.add(batch_plan(batch, i), plan_text_of(batch, i));
    if (trouble.empty()) trouble = files.add(sheet_file(batch, i), sheets[i]);
  }
  return trouble;
}

}  // namespace laywright

#include "paper/report_set.h"

#include <functional>
#include <string>

#include "figures/csv.h"
#include "figures/json.h"
#include "figures/summary.h"
#include "paper/cairo_sink.h"
#include "paper/section_sheet.h"
#include "paper/setup_sheet.h"

namespace laywright {
namespace {

// An empty picture is one that could not be drawn: an issue, not an empty file.
Issues add_picture(FileSet& files, const std::string& name, const std::string& bytes) {
  if (!bytes.empty()) return files.add(name, bytes);
  Issue issue;
  issue.file = name;
  issue.what = "the picture could not be drawn; there may be too little memory";
  return {issue};
}

}  // namespace

Issues add_reports(FileSet& files, const Plan& plan, const Build& build, const Measurements& measurements,
                   const TakeupRun& run, const ReportSettings& settings, Progress& progress) {
  SummaryStyle whole;
  whole.most_layers = whole.most_findings = SummaryStyle::all;
  const WindVerdict verdict = settings.verdict.value_or(verdict_of(plan, build, measurements, &run));
  whole.verdict = verdict;
  const auto picture = [&] { return draw_section_sheet(plan, build, measurements, settings.section_angle_deg); };
  const SetupSheet sheet{
      plan, build, measurements, run, Paper::a4, settings.sheet_picture, verdict, settings.drawn_on};
  const std::function<Issues()> reports[] = {
      [&] { return files.add("summary.txt", summary_text(plan, build, measurements, run, whole)); },
      [&] { return files.add("build.json", to_json(plan, build, measurements, run, verdict)); },
      [&] { return files.add("layers.csv", layers_csv(measurements)); },
      [&] { return files.add("findings.csv", findings_csv(measurements)); },
      [&] { return files.add("path.csv", [&](std::ostream& out) { write_path_csv(out, build, progress); }); },
      [&] { return add_picture(files, "section.svg", to_svg(picture())); },
      [&] { return add_picture(files, "section.png", to_png(picture())); },
      [&] { return add_picture(files, "sheet.pdf", to_pdf(draw_setup_sheet(sheet))); },
  };
  for (const auto& report : reports) {
    if (progress.cancelled()) return {};
    if (Issues trouble = report(); !trouble.empty()) return trouble;
  }
  return {};
}

}  // namespace laywright

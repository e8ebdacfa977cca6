// Loads a lay plan, lays it, and prints what the spool measures: outer_diameter PLAN.lay.toml
#include <cstdio>

#include <lay/lay.h>
#include <measure/measurements.h>
#include <plan/plan_file.h>

int main(int argc, char** argv) {
  namespace lw = laywright;
  if (argc != 2) {
    std::fprintf(stderr, "usage: outer_diameter PLAN.lay.toml\n");
    return 2;
  }

  const lw::Result<lw::Plan> plan = lw::load_plan(argv[1]);
  for (const lw::Issue& issue : plan.issues()) std::fprintf(stderr, "%s\n", lw::to_text(issue).c_str());
  if (!plan) return 1;

  lw::Progress progress;
  const lw::Result<lw::Build> build = lw::lay(plan.value(), lw::LaySettings{}, progress);
  for (const lw::Issue& issue : build.issues()) std::fprintf(stderr, "%s\n", lw::to_text(issue).c_str());
  if (!build) return 1;

  const lw::Measurements measured = lw::measure(plan.value(), build.value(), progress);
  const lw::OuterDiameter& outer = measured.outer_diameter;
  std::printf("%.2f mm left, %.2f mm middle, %.2f mm right, %.2f mm greatest\n", outer.left_mm, outer.middle_mm,
              outer.right_mm, outer.greatest_mm);
}

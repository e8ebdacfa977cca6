#include "figures/payoff_report.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/units.h"
#include "figures/figures.h"
#include "measure/severity.h"
#include "payoff/payoff_words.h"

namespace laywright {
namespace {

constexpr std::size_t most_layers = 24, most_catches = 8;

std::string layer_row(const Build& build, const PayoffLayer& layer) {
  const auto stroke = static_cast<std::size_t>(layer.layer) - 1;
  return fmt::format("  {:>5} {:>5} {:>11} {:>9} {:>8} {:>11}\n", layer.layer,
                     direction_name(build.strokes[stroke].direction), multiple_figure(layer.greatest),
                     figure(layer.mean, 2), figure(layer.catches, 0), figure(layer.caught_mm / mm_per_m, 2));
}

// As it comes off: the outermost layer first.
std::string layer_table(const Build& build, const PayoffRun& run) {
  std::string text = fmt::format("Layers, as they come off\n  {:>5} {:>5} {:>11} {:>9} {:>8} {:>11}\n", "layer",
                                 "laid", "greatest", "mean", "catches", "caught, m");
  const std::size_t layers = run.layers.size(), head = layers <= most_layers ? layers : most_layers * 2 / 3;
  const std::size_t tail = layers <= most_layers ? 0 : most_layers - head;
  for (std::size_t i = 0; i < head; ++i) text += layer_row(build, run.layers[layers - 1 - i]);
  if (tail > 0)
    text +=
        fmt::format("  {:>5} {} not shown; the whole list: --json\n", "...", counted(layers - head - tail, "layer"));
  for (std::size_t i = tail; i > 0; --i) text += layer_row(build, run.layers[i - 1]);
  return text;
}

}  // namespace

std::string catch_list(const Plan& plan, const PayoffRun& run, std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < std::min(run.catches.size(), most); ++i) {
    const PayoffCatch& caught = run.catches[i];
    text += fmt::format("  {:>2}  {}, layer {}, turn {}, {} deg: {}\n", i + 1, multiple_figure(caught.multiple),
                        caught.layer, figure(caught.turn, 1), figure(caught.angle_deg, 0), name_of(caught.severity));
    text += paragraph(sentence_of(caught, plan), 6);
  }
  const auto shown = static_cast<int>(std::min(run.catches.size(), most));
  if (run.catch_count > shown) {
    text += fmt::format("  ... {} more; the hardest {}: --json\n", figure(run.catch_count - shown, 0),
                        run.catches.size());
  }
  return text;
}

std::string payoff_section(const Plan& plan, const Build& build, const PayoffRun& run, std::size_t most) {
  return fmt::format("Payoff ({})\n", count_words(run)) + paragraph(payoff_line(run, build.length_mm), 2) +
         catch_list(plan, run, most);
}

std::string payoff_text(const Plan& plan, const Build& build, const PayoffRun& run) {
  std::string text = title_of(plan) + '\n' + paragraph(payoff_line(run, build.length_mm), 0);
  text += paragraph(basis_of(run), 2);
  text += paragraph(
      "Forces are in times the pull of winding: 1 comes off as it was wound. What is counted and what is left out: "
      "src/payoff/MODEL.md.",
      2);
  text += '\n' + layer_table(build, run);
  if (run.catch_count > 0) {
    text += fmt::format("\nCatches ({}; hardest first)\n", count_words(run)) + catch_list(plan, run, most_catches);
  } else if (run.hardest) {
    text += "\nHardest place\n" + paragraph(sentence_of(*run.hardest, plan), 2);
  }
  return text + '\n' +
         paragraph(
             "A running payoff draws in fingers and hair, and a caught fiber breaks and whips: stop the spool "
             "before a "
             "hand goes near.",
             2);
}

}  // namespace laywright

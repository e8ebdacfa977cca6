#include "lesson/claims.h"

#include <cmath>
#include <functional>

#include <fmt/format.h>

namespace laywright {
namespace {

const LaidBuild& of(const LaidPair& laid, Which which) { return laid[static_cast<std::size_t>(which)]; }

std::optional<double> value_of(const std::string& figure, const LaidBuild& laid) {
  if (laid.build == nullptr) return std::nullopt;
  return figure_of(figure, laid);
}

const char* word(Which which) { return which == Which::first ? "first" : "second"; }

const char* word(Relation relation) {
  switch (relation) {
    case Relation::above: return "above";
    case Relation::below: return "below";
    case Relation::about: break;
  }
  return "about";
}

// Calls `replace` with what stands between each pair of braces.
std::string replaced(const std::string& text, const std::function<std::string(const std::string&)>& replace) {
  std::string result;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t open = text.find('{', at);
    const std::size_t close = open == std::string::npos ? open : text.find('}', open);
    if (close == std::string::npos) break;
    result += text.substr(at, open - at) + replace(text.substr(open + 1, close - open - 1));
    at = close + 1;
  }
  return result + text.substr(at);
}

struct Named {
  Which which = Which::first;
  std::string figure;
};

std::optional<Named> named(const std::string& inside) {
  for (const Which which : {Which::first, Which::second}) {
    const std::string start = fmt::format("{}.", word(which));
    if (inside.rfind(start, 0) != 0) continue;
    std::string figure = inside.substr(start.size());
    if (figure_kind(figure)) return Named{which, std::move(figure)};
  }
  return std::nullopt;
}

}  // namespace

Verdict judge(const Claim& claim, const LaidPair& laid) {
  const std::optional<double> value = value_of(claim.figure, of(laid, claim.of));
  std::optional<double> other = claim.value;
  if (claim.than) other = value_of(claim.figure_there, of(laid, *claim.than));
  const FigureKind kind = figure_kind(claim.figure).value_or(FigureKind{});
  if (!value || !other) return {false, fmt::format("{}: there is no {} to compare", word(claim.of), kind.label)};
  const double bound = *other * (claim.than ? claim.times : 1.0);
  Verdict verdict;
  switch (claim.is) {
    case Relation::above: verdict.holds = *value > bound; break;
    case Relation::below: verdict.holds = *value < bound; break;
    case Relation::about: verdict.holds = std::abs(*value - bound) <= claim.within; break;
  }
  verdict.text = fmt::format("{}: {} {}, {} {}", word(claim.of), kind.label, figure_text(kind, *value),
                             word(claim.is), figure_text(kind, bound));
  return verdict;
}

std::string with_figures(const std::string& text, const LaidPair& laid, bool inch) {
  return replaced(text, [&](const std::string& inside) -> std::string {
    const std::optional<Named> name = named(inside);
    if (!name) return "{" + inside + "}";
    const std::optional<double> value = value_of(name->figure, of(laid, name->which));
    return value ? figure_text(*figure_kind(name->figure), *value, inch) : "...";
  });
}

std::string unknown_figure(const std::string& text) {
  std::string unknown;
  (void)replaced(text, [&](const std::string& inside) {
    if (unknown.empty() && !named(inside)) unknown = inside;
    return std::string();
  });
  return unknown;
}

}  // namespace laywright

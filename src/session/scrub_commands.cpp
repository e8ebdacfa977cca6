#include "session/scrub_commands.h"

#include <fmt/format.h>

#include "session/advice_commands.h"
#include "session/bench_inside.h"
#include "session/command_rows.h"
#include "session/reasons.h"

namespace laywright {
namespace {

constexpr const char* nothing_picked = "No turn is picked: click one in the picture.";

std::size_t finding_count(const Workbench& bench) { return bench.wound_in_hand()->measurements().findings.size(); }

std::optional<std::size_t> picked_in(const Workbench& bench) {
  return picked_node(*bench.stage_in_hand(), *bench.wound_in_hand());
}

void scrub(const BenchInside& in, const Playback& playback) {
  in.stage() = with_playback(in.stage(), playback, in.wound());
}

void play_or_pause(const BenchInside& in) {
  Playback playback = in.stage().playback;
  if (!playback.playing) return scrub(in, started(playback));
  playback.playing = false;
  scrub(in, playback);
}

std::string no_finding_that_way(const Workbench& bench, int direction) {
  if (finding_count(bench) == 0) return reason::no_finding;
  if (finding_beside(bench.stage_in_hand()->playback, *bench.wound_in_hand(), direction)) return "";
  return direction > 0 ? "No finding begins later in the wind." : "No finding begins earlier in the wind.";
}

std::string no_turn_that_way(const Workbench& bench, Toward toward) {
  const std::optional<std::size_t> node = picked_in(bench);
  if (!node) return nothing_picked;
  return neighbour(*bench.wound_in_hand(), *node, toward) ? "" : "There is no turn in that direction.";
}

std::string no_such_finding(const Workbench& bench, std::optional<std::size_t> finding) {
  return !finding || *finding < finding_count(bench) ? "" : "There is no such finding.";
}

// Those that are listed; none as long as payoff is not computed.
std::vector<PayoffCatch> catches_in(const Wound& wound) {
  const TakeupPtr run = wound.takeup();
  return run && run->payoff ? run->payoff->catches : std::vector<PayoffCatch>{};
}

void fly_to(const BenchInside& in, std::size_t finding) {
  in.stage() = flown_to(in.stage(), in.wound(), finding, !in.settings.motion);
}

void fly_on(const BenchInside& in, int direction) {
  const std::size_t count = in.wound().measurements().findings.size();
  const std::size_t step = direction > 0 ? 1 : count - 1;
  const std::size_t from = in.view().chosen_finding.value_or(direction > 0 ? count - 1 : 0);
  fly_to(in, (from + step) % count);
}

constexpr const char* words_of(Toward toward) {
  constexpr const char* words[] = {"next", "previous", "above", "below", "left", "right"};
  return words[static_cast<std::size_t>(toward)];
}

std::string spelled(const char* what, std::optional<std::size_t> which) {
  return which ? fmt::format("{} {}", what, *which) : fmt::format("{} none", what);
}

// To wherever `place` is.
template <class Place>
Command scrubbing(std::string name, Place place) {
  return {{.name = std::move(name), .needs = Needs::build, .act = [place](const BenchInside& in) {
             scrub(in, place(in.stage().playback, in.wound()));
           }}};
}

}  // namespace

Command cmd::scrub_length(double length_mm) {
  return scrubbing(fmt::format("scrub to {} mm", length_mm),
                   [length_mm](const Playback& p, const Wound& wound) { return at_length(p, wound, length_mm); });
}

Command cmd::scrub_turn(double turn) {
  return scrubbing(fmt::format("scrub to turn {}", turn),
                   [turn](const Playback& p, const Wound& wound) { return at_turn(p, wound, turn); });
}

Command cmd::scrub_time(double time_s) {
  return scrubbing(fmt::format("scrub to {} s", time_s),
                   [time_s](const Playback& p, const Wound& wound) { return at_time(p, wound, time_s); });
}

Command cmd::play_pause() { return {{.name = "play or pause", .needs = Needs::build, .act = play_or_pause}}; }

Command cmd::set_rate(double rate) {
  return scrubbing(fmt::format("rate {}", rate),
                   [rate](const Playback& p, const Wound&) { return with_rate(p, rate); });
}

Command cmd::change_rate(double factor) {
  return scrubbing(fmt::format("rate times {}", factor), [factor](const Playback& p, const Wound& wound) {
    return with_rate(p, rate_of(p, wound) * factor);
  });
}

Command cmd::step_turns(double turns) {
  return scrubbing(fmt::format("step {} turns", turns), [turns](Playback p, const Wound& wound) {
    p.playing = false;
    return at_turn(p, wound, moment_of(p, wound).turn + turns);
  });
}

Command cmd::step_finding(int direction) {
  return {{.name = fmt::format("step finding {}", direction),
           .needs = Needs::build,
           .why_not = [direction](const Workbench& bench) { return no_finding_that_way(bench, direction); },
           .act =
               [direction](const BenchInside& in) {
                 Playback playback = in.stage().playback;
                 playback.playing = false;
                 in.view().chosen_finding = finding_beside(playback, in.wound(), direction);
                 scrub(in, at_finding(playback, in.wound(), direction));
               }}};
}

Command cmd::to_start() {
  return scrubbing("to the start", [](const Playback& p, const Wound& wound) { return at_length(p, wound, 0.0); });
}

Command cmd::to_end() {
  return scrubbing("to the end",
                   [](const Playback& p, const Wound& wound) { return at_length(p, wound, Playback::at_end); });
}

Command cmd::pick_node(std::optional<std::size_t> node) {
  return {{.name = spelled("pick node", node), .needs = Needs::build, .act = [node](const BenchInside& in) {
             in.stage() = with_picked_node(in.stage(), in.wound(), node);
           }}};
}

Command cmd::pick_toward(Toward toward) {
  return {{.name = fmt::format("pick {}", words_of(toward)),
           .needs = Needs::build,
           .why_not = [toward](const Workbench& bench) { return no_turn_that_way(bench, toward); },
           .act =
               [toward](const BenchInside& in) {
                 const std::size_t node = *picked_node(in.stage(), in.wound());
                 in.stage() = with_picked_node(in.stage(), in.wound(), neighbour(in.wound(), node, toward));
               }}};
}

Command cmd::scrub_to_picked() {
  return {{.name = "scrub to the picked turn",
           .needs = Needs::build,
           .why_not = [](const Workbench& bench) { return picked_in(bench) ? "" : nothing_picked; },
           .act =
               [](const BenchInside& in) {
                 scrub(in, at_turn(in.stage().playback, in.wound(), *in.stage().picked_turn));
               }}};
}

Command cmd::choose_finding(std::optional<std::size_t> finding) {
  return {{.name = spelled("choose finding", finding),
           .needs = Needs::build,
           .why_not = [finding](const Workbench& bench) { return no_such_finding(bench, finding); },
           .act =
               [finding](const BenchInside& in) {
                 if (!finding) in.stage() = closed_again(in.stage());
                 in.view().chosen_finding = finding;
               }}};
}

Command cmd::fly_to_finding(std::size_t finding) {
  return {{.name = spelled("fly to finding", finding),
           .needs = Needs::build,
           .why_not = [finding](const Workbench& bench) { return no_such_finding(bench, finding); },
           .act = [finding](const BenchInside& in) { fly_to(in, finding); }}};
}

Command cmd::fly_to_catch(std::size_t caught) {
  return {{.name = fmt::format("fly to catch {}", caught),
           .needs = Needs::build,
           .why_not = [caught](const Workbench& bench) -> std::string {
             return caught < catches_in(*bench.wound_in_hand()).size() ? "" : "There is no such catch.";
           },
           .act =
               [caught](const BenchInside& in) {
                 in.stage() = flown_to(in.stage(), in.wound(), catches_in(in.wound())[caught], !in.settings.motion);
               }}};
}

Command cmd::fly_to_next_finding(int direction) {
  return {{.name = fmt::format("fly to finding by {}", direction),
           .needs = Needs::build,
           .why_not = [](const Workbench& bench) { return finding_count(bench) == 0 ? reason::no_finding : ""; },
           .act = [direction](const BenchInside& in) { fly_on(in, direction); }}};
}

CommandRows scrub_rows() {
  using namespace cmd;
  return {
      {"Scrub", "Play or pause", "Space", "Let the wind grow, or stop it.", play_pause()},
      {"Scrub", "One turn on", "Right", "Wind one more turn.", step_turns(1.0)},
      {"Scrub", "One turn back", "Left", "Unwind one turn.", step_turns(-1.0)},
      {"Scrub", "Ten turns on", "Shift+Right", "Wind ten more turns.", step_turns(10.0)},
      {"Scrub", "Ten turns back", "Shift+Left", "Unwind ten turns.", step_turns(-10.0)},
      {"Scrub", "To the next finding", "Ctrl+Right", "Wind to where the next finding begins.", step_finding(1)},
      {"Scrub", "To the finding before", "Ctrl+Left", "Unwind to where the finding before begins.",
       step_finding(-1)},
      {"Scrub", "To the start", "Home", "Unwind everything.", to_start()},
      {"Scrub", "To the end", "End", "Show the whole wind.", to_end()},
      {"Scrub", "Faster", "]", "Play twice as fast.", change_rate(2.0)},
      {"Scrub", "Slower", "[", "Play half as fast.", change_rate(0.5)},
      {"Scrub", "To the picked turn", "T", "Wind to the turn that is picked.", scrub_to_picked()},
  };
}

CommandRows pick_rows() {
  using namespace cmd;
  return {
      {"Pick", "Next turn", ".", "Pick the same place one turn later.", pick_toward(Toward::next)},
      {"Pick", "Turn before", ",", "Pick the same place one turn earlier.", pick_toward(Toward::previous)},
      {"Pick", "Turn above", "Up", "Pick the turn that lies on this one.", pick_toward(Toward::above)},
      {"Pick", "Turn below", "Down", "Pick the turn that this one lies on.", pick_toward(Toward::below)},
      {"Pick", "Turn to the left", "Alt+Left", "Pick the neighbour in the layer.", pick_toward(Toward::left)},
      {"Pick", "Turn to the right", "Alt+Right", "Pick the neighbour in the layer.", pick_toward(Toward::right)},
      {"Pick", "Nothing", "Backspace", "Let the picked turn go.", pick_node()},
      {"Pick", "Next in the list", "N", "Fly to the next finding of the list.", fly_to_next_finding(1)},
      {"Pick", "Before in the list", "Shift+N", "Fly to the finding before in the list.", fly_to_next_finding(-1)},
      {"Pick", "Why is it there?", "Y", "Try which setting the chosen finding comes from, and what would remove it.",
       explain_finding()},
      {"Pick", "No finding", "Shift+Backspace", "Let the chosen finding go.", choose_finding()},
  };
}

}  // namespace laywright

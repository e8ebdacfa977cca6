#include "workbench/command_table.h"

namespace laywright {
namespace {

using namespace cmd;

void add_files(std::vector<CommandInfo>& all) {
  all.insert(
      all.end(),
      {
          {"File", "Open...", "Ctrl+O", "Open a lay plan.", Ask{Question::file_to_open}},
          {"File", "Open the sample", "", "Open the plan that comes with the program.", OpenSample{}},
          {"File", "Save", "Ctrl+S", "Save the plan; comments and order of its file stay.", Save{}},
          {"File", "Save as...", "Ctrl+Shift+S", "Save the plan to another file.", Ask{Question::file_to_save}},
          {"File", "Set-up sheet...", "Ctrl+P", "See the sheet for the winder as it will print, and save it.",
           Ask{Question::setup_sheet}},
          {"File", "Share page...", "Ctrl+E", "Save the wind as one page that opens in any browser.",
           Ask{Question::share_page}},
          {"File", "Revert", "Ctrl+Shift+R", "Go back to what the file says; can be undone.", Revert{}},
          {"File", "Keep mine", "", "Let a change that others made to the file be.", KeepMine{}},
          {"File", "Close", "Ctrl+W", "Close the plan.", Close{false}},
          {"Edit", "Undo", "Ctrl+Z", "Take the last edit of the plan back.", Undo{}},
          {"Edit", "Redo", "Ctrl+Y", "Do again what was undone.", Redo{}},
          {"Edit", "Add a step", "", "Change pitch or stops from a layer on.", AddStep{}},
          {"Edit", "Leave out unknown keys", "", "Drop what the file has that is no part of a plan.",
           LeaveOutUnknown{}},
          {"Build", "Stop laying", "Escape", "Stop laying the plan, or what is searched for; what is shown stays.",
           StopLaying{}},
          {"Build", "Lay again", "F5", "Lay the plan once more.", LayAgain{}},
          {"Build", "Better settings...", "Ctrl+B", "Search for settings that wind better, and see what they cost.",
           Ask{Question::better_settings}},
          {"Build", "Judge over draws", "",
           "Judge by the worst of several winds: other seeds, fiber within its tolerance.", JudgeDraws{}},
          {"Build", "Next seed", "Shift+F5", "Draw the scatter of pitch and stops anew.", NextSeed{}},
      });
}

void add_scrubber(std::vector<CommandInfo>& all) {
  all.insert(
      all.end(),
      {
          {"Scrub", "Play or pause", "Space", "Let the wind grow, or stop it.", PlayPause{}},
          {"Scrub", "One turn on", "Right", "Wind one more turn.", StepTurns{1.0}},
          {"Scrub", "One turn back", "Left", "Unwind one turn.", StepTurns{-1.0}},
          {"Scrub", "Ten turns on", "Shift+Right", "Wind ten more turns.", StepTurns{10.0}},
          {"Scrub", "Ten turns back", "Shift+Left", "Unwind ten turns.", StepTurns{-10.0}},
          {"Scrub", "To the next finding", "Ctrl+Right", "Wind to where the next finding begins.", StepFinding{1}},
          {"Scrub", "To the finding before", "Ctrl+Left", "Unwind to where the finding before begins.",
           StepFinding{-1}},
          {"Scrub", "To the start", "Home", "Unwind everything.", ToStart{}},
          {"Scrub", "To the end", "End", "Show the whole wind.", ToEnd{}},
          {"Scrub", "Faster", "]", "Play twice as fast.", ChangeRate{2.0}},
          {"Scrub", "Slower", "[", "Play half as fast.", ChangeRate{0.5}},
          {"Scrub", "To the picked turn", "T", "Wind to the turn that is picked.", ScrubToPicked{}},
      });
}

void add_picks(std::vector<CommandInfo>& all) {
  all.insert(
      all.end(),
      {
          {"Pick", "Next turn", ".", "Pick the same place one turn later.", PickToward{Toward::next}},
          {"Pick", "Turn before", ",", "Pick the same place one turn earlier.", PickToward{Toward::previous}},
          {"Pick", "Turn above", "Up", "Pick the turn that lies on this one.", PickToward{Toward::above}},
          {"Pick", "Turn below", "Down", "Pick the turn that this one lies on.", PickToward{Toward::below}},
          {"Pick", "Turn to the left", "Alt+Left", "Pick the neighbour in the layer.", PickToward{Toward::left}},
          {"Pick", "Turn to the right", "Alt+Right", "Pick the neighbour in the layer.", PickToward{Toward::right}},
          {"Pick", "Nothing", "Backspace", "Let the picked turn go.", PickNode{}},
          {"Pick", "Next in the list", "N", "Fly to the next finding of the list.", FlyToNextFinding{1}},
          {"Pick", "Before in the list", "Shift+N", "Fly to the finding before in the list.", FlyToNextFinding{-1}},
          {"Pick", "Why is it there?", "Y",
           "Try which setting the chosen finding comes from, and what would remove it.", ExplainFinding{}},
          {"Pick", "No finding", "Shift+Backspace", "Let the chosen finding go.", ChooseFinding{}},
      });
}

void add_looks(std::vector<CommandInfo>& all) {
  all.insert(
      all.end(),
      {
          {"View", "Peel one layer", "PageDown", "Take the outermost layer off.", PeelOne{-1}},
          {"View", "Put one layer back", "PageUp", "Put the outermost layer back on.", PeelOne{1}},
          {"View", "Wedge", "W", "Cut a quarter out of the spool, or close it.", ToggleWedge{}},
          {"View", "Axial cut", "X", "Cut the spool along its axis, or close it.", ToggleAxialCut{}},
          {"View", "Fade what is outside", "G", "Show layers outside the peel faded, or not at all.",
           ToggleOutside{}},
          {"View", "Show all", "A", "No peel, no cut, the whole wind.", ShowAll{}},
          {"View", "Next colouring", "C", "Colour by something else.", NextColouring{}},
          {"View", "Findings", "F", "Mark findings in the picture, or not.", ToggleFindings{}},
          {"View", "Dimensions", "D", "Show dimension lines, or not.", ToggleDimensions{}},
          {"View", "See-through flanges", "S", "See through the flanges, or not.", ToggleSeeThrough{}},
          {"View", "Guide", "V", "Show the guide and the free fiber while the wind grows, or not.", ToggleGuide{}},
          {"View", "Metric or inch", "U", "Change the units of all that is shown.", ToggleUnits{}},
          {"View", "Light or dark", "L", "Change the colours of the window.", ToggleTheme{}},
          {"View", "Perspective or parallel", "P", "Change how depth is drawn.", ToggleProjection{}},
          {"View", "Flights or jumps", "J", "Let the camera fly to a finding, or be there at once.", ToggleMotion{}},
          {"View", "Show", "F9", "Show the spool to others: it fills, turns, and begins again.", Show{}},
          {"View", "Fit", "Z", "See the whole spool.", FitView{}},
          {"View", "From the front", "1", "Look at the spool from the side, its left end on the left.",
           LookFrom{0.0, 0.0}},
          {"View", "From above", "2", "Look at the top of the spool.", LookFrom{0.0, 90.0}},
          {"View", "From the left", "3", "Look at the left flange.", LookFrom{-90.0, 0.0}},
          {"View", "From the right", "4", "Look at the right flange.", LookFrom{90.0, 0.0}},
          {"View", "Askew", "5", "Look at the spool askew, from above.", LookFrom{30.0, 20.0}},
          {"View", "Turn left", "Ctrl+Alt+Left", "Go round the spool to the left.", Orbit{-10.0, 0.0}},
          {"View", "Turn right", "Ctrl+Alt+Right", "Go round the spool to the right.", Orbit{10.0, 0.0}},
          {"View", "Turn up", "Ctrl+Alt+Up", "Look from higher above.", Orbit{0.0, 10.0}},
          {"View", "Turn down", "Ctrl+Alt+Down", "Look from lower down.", Orbit{0.0, -10.0}},
          {"View", "Nearer", "+", "Go nearer.", Zoom{1.25}},
          {"View", "Farther", "-", "Go farther away.", Zoom{0.8}},
      });
}

void add_rest(std::vector<CommandInfo>& all) {
  all.insert(all.end(),
             {
                 {"Compare", "Keep this build", "K", "Keep this build beside what comes next.", PinBuild{}},
                 {"Compare", "Compare with...", "Ctrl+K", "Show another open plan beside this one.",
                  Ask{Question::what_to_compare}},
                 {"Compare", "Link the two views", "Shift+K", "Move both together, or each alone.", ToggleLinked{}},
                 {"Compare", "Take the other in hand", "H",
                  "Of two pictures that move alone, the one that keys and panels are for.", TakeInHand{}},
                 {"Compare", "Stop comparing", "", "Show one build alone.", StopComparing{}},
                 {"Learn", "Start the lesson again", "", "Go back to the first step, and forget the answers.",
                  RestartLesson{}},
                 {"Learn", "Leave the lesson", "", "Close the lesson and go back to the plans that are open.",
                  CloseLesson{}},
                 {"Help", "Keys and commands", "F1", "List everything that can be done, with its key.",
                  Ask{Question::help}},
             });
}

std::vector<CommandInfo> make_table() {
  std::vector<CommandInfo> all;
  add_files(all);
  add_scrubber(all);
  add_picks(all);
  add_looks(all);
  add_rest(all);
  return all;
}

}  // namespace

const std::vector<CommandInfo>& command_table() {
  static const std::vector<CommandInfo> all = make_table();
  return all;
}

}  // namespace laywright

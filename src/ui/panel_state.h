// What the panels remember from one frame to the next that is nobody else's business: which tab is open, what is
// being typed, how the flat drawings are zoomed.
#pragma once

#include <array>
#include <chrono>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <imgui.h>

#include "answers/batch_rows.h"
#include "pattern/pattern_table.h"
#include "scene/scene.h"
#include "session/records_commands.h"
#include "session/workbench.h"
#include "ui/folder_list.h"
#include "ui/panel_image.h"
#include "ui/panel_work.h"
#include "ui/record_page_words.h"
#include "ui/section_drawing.h"
#include "ui/sheet_pages.h"

namespace laywright {

using Commands = std::vector<Command>;

struct Box2 {
  float x = 0.0F, y = 0.0F, width = 0.0F, height = 0.0F;
};

// Where things stand in the window, by name, for whoever drives it from outside. Empty unless asked for.
struct Places {
  bool wanted = false;
  std::map<std::string, Box2> at;

  // The item drawn last.
  void note_item(const std::string& name) {
    if (!wanted) return;
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
    at[name] = {low.x, low.y, high.x - low.x, high.y - low.y};
  }
  void note(const std::string& name, const Box2& box) {
    if (wanted) at[name] = box;
  }
};

enum class ImageSlot { section, map, sheet_page_1, sheet_page_2 };
using ShowImage = std::function<ImTextureID(ImageSlot, const PanelImage&)>;

enum class FindingOrder { gravity, kind, layer, turn, size };

struct FindingsState {
  FindingOrder order = FindingOrder::gravity;
  bool falling = false;
  std::string filter;
  std::optional<FindingKind> kind;
  bool small_ones = false;  // are shown, too, where nothing is looked for
};

struct SectionState {
  double angle_deg = 90.0;
  std::optional<FaceWindow> window;  // none: all of it
  FaceWindow seen;                   // in the last frame
  SectionDrawing drawing;            // the newest that was made
  SectionDrawing asked;              // what the newest that was asked for will cover, without its turns
  PanelImage image;                  // of the drawing, where it is one
  PanelWork<SectionDrawing> work{"the section"};
};

struct MapState {
  std::weak_ptr<const Scene> scene, asked;  // of the image, and of the one that is being made
  PanelImage image;
  PanelWork<std::pair<std::weak_ptr<const Scene>, PanelImage>> work{"the map"};
  double x_from = 0.0, x_to = 1.0;        // shown share of the width
  double turn_from = 0.0, turn_to = 1.0;  // and of the way around
};

struct SheetState {
  Paper paper = Paper::a4;
  bool wide = false;        // to be read, not to be seen as a whole
  int page = 1;             // that a file of one page holds
  SheetPages pages, asked;  // the newest that were drawn, and what the newest that were asked for will be
  PanelWork<SheetPages> work{"the set-up sheet"};
};

struct StudyState {
  std::uint64_t desk = 0;  // whose keys these are
  StudyRequest request;
  std::string figure = "outer_diameter_greatest_mm";  // by key
  bool sets_up = false;           // where there is no room for both: the request, not what came of it
  bool by_keys = false;           // moved by keys last
  std::size_t cursor = 0;         // the build that the keyboard is on
  std::optional<double> pointed;  // along a curve, while the mouse's button is down
};

struct PatternState {
  std::uint64_t desk = 0, changes = 0;  // of whose plan it is; 0: none yet
  std::optional<PatternTable> table;    // none: the plan is not sound
  double d_mm = 0.0;
};

struct NewPlanState {
  NewRequest request;               // as typed
  std::optional<NewRequest> asked;  // that was asked last
  std::optional<Shelf> shelf;       // as it was when the dialog came up
};

struct RecordsState {
  std::string place;                   // as typed
  std::optional<RecordFilter> filter;  // as typed, until it is what is looked at
  std::string wanted_tab;              // to be brought to the front in the next frame
  std::uint64_t desk = 0;              // whose spool is being said of
  RecordNames names;
  SaidOfSpool said, more;  // of the present plan's spool; of the record whose page is open
  long long more_of = 0;
  std::string by;              // who fits
  bool asked_to_keep = false;  // what was typed is being written
  bool asked_to_amend = false;
  std::string trend;  // the chart that is seen, by its heading
  RecordPageWords page;
};

struct OrderState {
  std::weak_ptr<const LaidOrder> of;  // whose rows these are
  bool inch = false;                  // and in which units
  std::vector<BatchRow> rows;         // of each spool, and last of all
};

struct BetterState {
  bool sets_up = false;  // the request is seen, not what was found
  BetterRequest request;
};

// What is being typed goes into the plan when the person says so: half a number or unit is no value.
struct TypingState {
  using Clock = std::chrono::steady_clock;

  std::string path;        // of the field that is being typed into; empty: none
  std::string text, sent;  // now, and what the plan has of it
  std::uint64_t gesture = 0;
  std::uint64_t desk = 0, changes = 0;        // whose field it is, and its changes when typing began
  std::optional<Clock::time_point> typed_at;  // last, where the text stands for itself but is not sent
  bool seen = false;                          // the field was drawn in this frame
};

// A step button that is held.
struct StepState {
  std::string path;
  std::uint64_t gesture = 0;
  TypingState::Clock::time_point next;  // when it steps again
};

// A colour that is mixed, while its picker is open.
struct MixState {
  std::string path;
  std::array<float, 3> shares{};  // red, green, blue
  std::uint64_t gesture = 0;
};

// Where the keyboard is. By itself it is with the picture, and keys are commands; a panel takes those that move about
// in it and operate it.
struct FocusState {
  std::string panel;                      // by the name of its tab, or "messages"; empty: the picture
  bool enters = false;                    // the panel takes the keyboard in the next frame
  bool controls = false;                  // of a panel with a drawing or a list: what stands above that
  bool enter_held = false;                // the Enter key went down where nothing is typed
  std::string menu;                       // to be opened in the next frame
  std::vector<std::string> drawing_keys;  // for the section or the map, in this frame
  std::vector<std::string> open_tabs;     // as drawn in this frame, from left to right
  bool messages = false;                  // there are some
};

struct FileState {
  std::string folder, name;
  bool all_files = false;
  bool to_list = false, to_name = false;  // where the keyboard goes in this frame
  std::string looked_for;                 // the path of which `is_there` is told
  std::filesystem::file_type is_there = std::filesystem::file_type::none;
  FolderList list;
};

// What the window shows of a build; made elsewhere.
struct Shown {
  std::shared_ptr<const Scene> scene;  // null until there is one
  bool busy = false;                   // a newer one is being made
};

// The pull that draws the fiber off, while a picture waits for it.
struct ColoursState {
  std::optional<double> share;  // none: nothing waits
  bool stops = false;           // the person gives it up
};

struct PanelState {
  Places places;
  ColoursState colours;
  TypingState typing;
  StepState step;
  MixState mix;
  FocusState focus;
  FindingsState findings;
  SectionState section;
  MapState map;
  SheetState sheet;
  StudyState study;
  PatternState pattern;
  BetterState better;
  NewPlanState new_plan;
  RecordsState records;
  OrderState order;
  FileState files;
  std::uint64_t gestures = 0;
  std::uint64_t plan_tab = 0;                // id of the plan whose tab was brought to the front last
  std::string wanted_tab;                    // to be brought to the front in the next frame
  std::vector<std::string> remembered_tabs;  // those in front when the program last ended, until they are drawn
  bool wants_to_quit = false, quits = false;
  float drawer_height = 0.0F;  // as the person dragged it, in letters; 0: by default
  bool drawer_open = true;
  bool compared = false;  // in the last frame
  // While a wind is shown, its keys are told until then.
  std::optional<TypingState::Clock::time_point> show_keys_until;
  bool changes_screen = false;       // to the full screen, or back
  const void* letter_of = nullptr;   // the document whose title and customer the dialog of the share page has
  std::string lesson_page;           // that was drawn last: its file and step
  bool cause_asked = false;          // a cause was searched for in the last frame
  std::optional<ImVec2> pressed_at;  // in the picture
  ShowImage show_image;
  PaperPicture paper_picture;  // may be empty
  std::function<void()> wake;  // a frame is needed; from any thread
  ImFont* strong = nullptr;    // of headings
  ImFont *reading = nullptr, *reading_strong = nullptr, *title = nullptr, *figure = nullptr;  // as in Fonts
  float scale = 1.0F;  // of letters and all that goes by them
};

}  // namespace laywright

// What the panels remember from one frame to the next that is nobody else's business: which tab is open, what is
// being typed, how the flat drawings are zoomed.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <imgui.h>

#include "scene/scene.h"
#include "workbench/workbench.h"

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

// An image that the graphics card holds for a panel: `version` tells when it must be made anew.
struct PanelImage {
  std::uint64_t version = 0;
  int width = 0, height = 0;
  std::vector<Rgba> pixels;
};
enum class ImageSlot { section, map };
using ShowImage = std::function<ImTextureID(ImageSlot, const PanelImage&)>;

enum class FindingOrder { gravity, kind, layer, turn, size };

struct FindingsState {
  FindingOrder order = FindingOrder::gravity;
  bool falling = false;
  std::string filter;
  std::optional<FindingKind> kind;
};

struct SectionState {
  double angle_deg = 90.0;
  std::optional<FaceWindow> window;  // none: all of it
  // What is drawn, and of what.
  std::weak_ptr<const Wound> wound;
  std::string key;
  std::vector<FaceDisc> discs;
  std::vector<std::uint32_t> nodes;  // of the image, where there is one
  PanelImage image;
  double px_mm = 0.0;
  FaceWindow drawn;
};

struct MapState {
  std::weak_ptr<const Scene> scene;
  PanelImage image;
  double x_from = 0.0, x_to = 1.0;        // shown share of the width
  double turn_from = 0.0, turn_to = 1.0;  // and of the way around
};

struct TypingState {
  std::string path;  // of the field that is being typed into; empty: none
  std::string text;
  std::uint64_t gesture = 0;
};

struct FileState {
  std::string folder, name;
  bool all_files = false;
};

// What the window shows of a build; made elsewhere.
struct Shown {
  std::shared_ptr<const Scene> scene;  // null until there is one
  bool busy = false;                   // a newer one is being made
};

struct PanelState {
  Places places;
  TypingState typing;
  FindingsState findings;
  SectionState section;
  MapState map;
  FileState files;
  std::uint64_t gestures = 0;
  std::string wanted_tab;  // to be brought to the front in the next frame
  bool wants_to_quit = false, quits = false;
  float drawer_height = 0.0F;  // as the person dragged it, in letters; 0: by default
  bool drawer_open = true;
  bool compared = false;             // in the last frame
  std::optional<ImVec2> pressed_at;  // in the picture
  ShowImage show_image;
  ImFont* strong = nullptr;  // of headings
};

}  // namespace laywright

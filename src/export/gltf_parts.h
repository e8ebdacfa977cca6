// The parts of a glTF file: materials, meshes, nodes, and the bytes behind them. Source of names, numbers and rules:
// Khronos Group, glTF 2.0 specification, and its extension KHR_mesh_quantization.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "export/tube.h"
#include "scene/spool_solid.h"

namespace laywright {

class GltfParts {
 public:
  // `unit`: metres per mm of what is added.
  explicit GltfParts(double unit) : unit_(unit) {}

  // Each returns the number by which others refer to it. A colour with alpha below 255 is see-through.
  int add_material(const std::string& name, const Rgba& colour, double roughness);
  int add_solid(const std::string& name, const Mesh& mesh, int material);
  int add_group(const std::string& name, const std::vector<int>& children);

  // Between these two, tubes are added: their vertices stand in `bytes` one behind the other, `vertex_bytes_in_all` at
  // most, and nothing else is put there.
  void begin_tubes(int sides, Numbers numbers, std::size_t vertex_bytes_in_all);
  int add_tube(const TubeLayer& tube, int material);  // its vertices are in `bytes` already
  void end_tubes();

  // Writes the list of contents.
  void finish(const std::vector<int>& roots, const std::string& title);

  std::string contents;
  std::string bytes;

 private:
  using Json = nlohmann::json;

  int add_view(std::size_t at, std::size_t size, int target);
  int add_accessor(Json accessor);
  int add_node(Json node);
  int add_mesh(const std::string& name, Json primitives);
  Json primitive_of(const TubePiece& piece, int triangles, int material);
  int triangles_of(std::size_t rings);
  void pad();

  double unit_;
  Json materials_ = Json::array(), meshes_ = Json::array(), nodes_ = Json::array();
  Json views_ = Json::array(), accessors_ = Json::array();

  // Of the tubes.
  Numbers numbers_ = Numbers::floats;
  int sides_ = 0, vertex_view_ = 0;
  std::size_t tubes_at_ = 0, most_rings_ = 0;
  std::map<std::size_t, int> triangles_;  // accessor of so many rings' triangles; begin and end cap: 0 and 1
};

}  // namespace laywright

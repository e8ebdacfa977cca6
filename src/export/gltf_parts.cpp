#include "export/gltf_parts.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace laywright {

namespace {

// Numbers of the specification.
constexpr int byte_type = 5120, short_type = 5122, unsigned_short_type = 5123, float_type = 5126;
constexpr int vertex_target = 34962, index_target = 34963;

constexpr std::size_t begin_cap_key = 0, end_cap_key = 1;

// From the colours of the screen to shares of light (IEC 61966-2-1, sRGB).
double linear(std::uint8_t channel) {
  const double share = channel / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

template <class Number>
void append(std::string& bytes, const Number& number) {
  bytes.append(reinterpret_cast<const char*>(&number), sizeof number);
}

}  // namespace

int GltfParts::add_material(const std::string& name, const Rgba& colour, double roughness) {
  const double opacity = colour.a / 255.0;
  nlohmann::json material{{"name", name},
                          {"pbrMetallicRoughness",
                           {{"baseColorFactor", {linear(colour.r), linear(colour.g), linear(colour.b), opacity}},
                            {"metallicFactor", 0.0},
                            {"roughnessFactor", roughness}}}};
  if (opacity < 1.0) material["alphaMode"] = "BLEND";
  materials_.push_back(std::move(material));
  return static_cast<int>(materials_.size()) - 1;
}

int GltfParts::add_view(std::size_t at, std::size_t size, int target) {
  views_.push_back({{"buffer", 0}, {"byteOffset", at}, {"byteLength", size}, {"target", target}});
  return static_cast<int>(views_.size()) - 1;
}

int GltfParts::add_accessor(Json accessor) {
  accessors_.push_back(std::move(accessor));
  return static_cast<int>(accessors_.size()) - 1;
}

int GltfParts::add_node(Json node) {
  nodes_.push_back(std::move(node));
  return static_cast<int>(nodes_.size()) - 1;
}

int GltfParts::add_mesh(const std::string& name, Json primitives) {
  meshes_.push_back({{"name", name}, {"primitives", std::move(primitives)}});
  return static_cast<int>(meshes_.size()) - 1;
}

void GltfParts::pad() { bytes.resize((bytes.size() + 3) / 4 * 4); }

int GltfParts::add_group(const std::string& name, const std::vector<int>& children) {
  return add_node({{"name", name}, {"children", children}});
}

int GltfParts::add_solid(const std::string& name, const Mesh& mesh, int material) {
  constexpr float most = std::numeric_limits<float>::max();
  std::array<float, 3> low{most, most, most}, high{-most, -most, -most};
  const auto unit = static_cast<float>(unit_);
  const std::size_t vertices_at = bytes.size();
  for (const MeshVertex& v : mesh.vertices) {
    const std::array<float, 3> place{v.x * unit, v.y * unit, v.z * unit};
    for (std::size_t i = 0; i < 3; ++i) {
      low[i] = std::min(low[i], place[i]);
      high[i] = std::max(high[i], place[i]);
    }
    append(bytes, place);
    append(bytes, std::array<float, 3>{v.nx, v.ny, v.nz});
  }
  const int vertices = add_view(vertices_at, bytes.size() - vertices_at, vertex_target);
  constexpr std::size_t stride = 6 * sizeof(float);
  views_.back()["byteStride"] = stride;
  const std::size_t triangles_at = bytes.size();
  for (const std::uint32_t index : mesh.triangles) append(bytes, static_cast<std::uint16_t>(index));
  const int triangles = add_view(triangles_at, bytes.size() - triangles_at, index_target);
  pad();

  const int places = add_accessor({{"bufferView", vertices},
                                   {"componentType", float_type},
                                   {"count", mesh.vertices.size()},
                                   {"type", "VEC3"},
                                   {"min", low},
                                   {"max", high}});
  const int normals = add_accessor({{"bufferView", vertices},
                                    {"byteOffset", stride / 2},
                                    {"componentType", float_type},
                                    {"count", mesh.vertices.size()},
                                    {"type", "VEC3"}});
  const int indices = add_accessor({{"bufferView", triangles},
                                    {"componentType", unsigned_short_type},
                                    {"count", mesh.triangles.size()},
                                    {"type", "SCALAR"}});
  const int made = add_mesh(
      name,
      {{{"attributes", {{"POSITION", places}, {"NORMAL", normals}}}, {"indices", indices}, {"material", material}}});
  return add_node({{"name", name}, {"mesh", made}});
}

void GltfParts::begin_tubes(int sides, Numbers numbers, std::size_t vertex_bytes_in_all) {
  sides_ = sides;
  numbers_ = numbers;
  tubes_at_ = bytes.size();
  bytes.reserve(bytes.size() + vertex_bytes_in_all);
  vertex_view_ = add_view(tubes_at_, 0, vertex_target);
  views_.back()["byteStride"] = vertex_bytes(numbers);
}

// The triangles come when all tubes are there; until then only their accessors are known.
int GltfParts::triangles_of(std::size_t rings) {
  const auto [at, is_new] = triangles_.try_emplace(rings, 0);
  if (is_new) {
    at->second = add_accessor({{"componentType", unsigned_short_type}, {"type", "SCALAR"}});
    most_rings_ = std::max(most_rings_, rings);
  }
  return at->second;
}

nlohmann::json GltfParts::primitive_of(const TubePiece& piece, int triangles, int material) {
  const std::size_t offset = piece.at - tubes_at_, vertices = piece.rings * static_cast<std::size_t>(sides_);
  Json places{{"bufferView", vertex_view_}, {"byteOffset", offset}, {"count", vertices}, {"type", "VEC3"}};
  Json normals = places;
  normals["byteOffset"] = offset + normal_offset(numbers_);
  if (numbers_ == Numbers::small) {
    const auto whole = [](const std::array<float, 3>& q) {
      return std::array<int, 3>{static_cast<int>(q[0]), static_cast<int>(q[1]), static_cast<int>(q[2])};
    };
    places.update({{"componentType", short_type},
                   {"normalized", true},
                   {"min", whole(piece.low)},
                   {"max", whole(piece.high)}});
    normals.update({{"componentType", byte_type}, {"normalized", true}});
  } else {
    places.update({{"componentType", float_type}, {"min", piece.low}, {"max", piece.high}});
    normals["componentType"] = float_type;
  }
  return {
      {"attributes", {{"POSITION", add_accessor(std::move(places))}, {"NORMAL", add_accessor(std::move(normals))}}},
      {"indices", triangles},
      {"material", material}};
}

int GltfParts::add_tube(const TubeLayer& tube, int material) {
  Json primitives = Json::array();
  for (const TubePiece& piece : tube.pieces) {
    primitives.push_back(primitive_of(piece, triangles_of(piece.rings), material));
  }
  if (tube.begin_cap) primitives.push_back(primitive_of(*tube.begin_cap, triangles_of(begin_cap_key), material));
  if (tube.end_cap) primitives.push_back(primitive_of(*tube.end_cap, triangles_of(end_cap_key), material));
  const std::string name = fmt::format("Layer {}", tube.layer);
  const double scale = unit_ * tube.grid.step_mm * TubeGrid::most;
  const Vec3 centre = unit_ * tube.grid.centre;
  return add_node({{"name", name},
                   {"mesh", add_mesh(name, std::move(primitives))},
                   {"translation", {centre.x, centre.y, centre.z}},
                   {"scale", {scale, scale, scale}}});
}

void GltfParts::end_tubes() {
  views_[static_cast<std::size_t>(vertex_view_)]["byteLength"] = bytes.size() - tubes_at_;
  const std::size_t at = bytes.size();
  const auto put = [&](const std::vector<std::uint16_t>& triangles) {
    const std::size_t offset = bytes.size() - at;
    for (const std::uint16_t index : triangles) append(bytes, index);
    return offset;
  };
  const std::size_t between_rings = 6 * static_cast<std::size_t>(sides_);
  const std::size_t cap_count = 3 * static_cast<std::size_t>(sides_ - 2);
  put(tube_triangles(sides_, most_rings_));
  const std::size_t begin_at = put(cap_triangles(sides_, false)), end_at = put(cap_triangles(sides_, true));
  const int view = add_view(at, bytes.size() - at, index_target);
  pad();
  for (const auto& [rings, number] : triangles_) {
    Json& accessor = accessors_[static_cast<std::size_t>(number)];
    const bool cap = rings == begin_cap_key || rings == end_cap_key;
    accessor["bufferView"] = view;
    accessor["count"] = cap ? cap_count : between_rings * (rings - 1);
    if (cap) accessor["byteOffset"] = rings == begin_cap_key ? begin_at : end_at;
  }
}

void GltfParts::finish(const std::vector<int>& roots, const std::string& title) {
  Json file{{"asset", {{"version", "2.0"}, {"generator", "laywright"}}},
            {"scene", 0},
            {"scenes", Json::array({{{"name", title}, {"nodes", roots}}})},
            {"nodes", std::move(nodes_)},
            {"meshes", std::move(meshes_)},
            {"materials", std::move(materials_)},
            {"accessors", std::move(accessors_)},
            {"bufferViews", std::move(views_)},
            {"buffers", Json::array({{{"byteLength", bytes.size()}}})}};
  if (numbers_ == Numbers::small) {
    file["extensionsUsed"] = Json::array({"KHR_mesh_quantization"});
    file["extensionsRequired"] = file["extensionsUsed"];
  }
  contents = file.dump(-1, ' ', false, Json::error_handler_t::replace);
  contents.resize((contents.size() + 3) / 4 * 4, ' ');
}

}  // namespace laywright

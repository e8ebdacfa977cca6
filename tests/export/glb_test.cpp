// Models with 32-bit numbers, read back by assimp and held against the build. (assimp does not know
// KHR_mesh_quantization; small numbers are read back by read_model.mjs.)
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>

#include <assimp/material.h>
#include <assimp/mesh.h>
#include <assimp/scene.h>
#include <assimp/Importer.hpp>
#include <glm/geometric.hpp>

#include "export/glb.h"
#include "render/laid_scene.h"

namespace laywright {
namespace {

std::string bytes_of(const Glb& glb) {
  std::ostringstream out;
  write_glb(out, glb);
  return out.str();
}

Glb made(const SceneSource& source, const GlbSettings& settings) {
  Progress progress;
  Result<Glb> glb = make_glb(source, settings, progress);
  REQUIRE(glb.ok());
  return std::move(glb).value();
}

struct Triangle {
  Vec3 a, b, c;
};

// What a node shows, in mm of the spool.
struct Part {
  std::vector<Vec3> places, normals;
  std::vector<Triangle> triangles;
};

void collect(const aiScene& scene, const aiNode& node, const aiMatrix4x4& above,
             std::map<std::string, Part>& parts) {
  const aiMatrix4x4 matrix = above * node.mTransformation;
  Part& part = parts[node.mName.C_Str()];
  for (unsigned i = 0; i < node.mNumMeshes; ++i) {
    const aiMesh& mesh = *scene.mMeshes[node.mMeshes[i]];
    const std::size_t first = part.places.size();
    for (unsigned v = 0; v < mesh.mNumVertices; ++v) {
      const aiVector3D place = matrix * mesh.mVertices[v], normal = mesh.mNormals[v];
      part.places.emplace_back(1e3 * place.x, 1e3 * place.y, 1e3 * place.z);
      part.normals.emplace_back(normal.x, normal.y, normal.z);
    }
    for (unsigned f = 0; f < mesh.mNumFaces; ++f) {
      const unsigned* at = mesh.mFaces[f].mIndices;
      part.triangles.push_back({part.places[first + at[0]], part.places[first + at[1]], part.places[first + at[2]]});
    }
  }
  for (unsigned i = 0; i < node.mNumChildren; ++i) collect(scene, *node.mChildren[i], matrix, parts);
}

std::map<std::string, Part> read(const std::string& bytes) {
  Assimp::Importer importer;
  const aiScene* scene = importer.ReadFileFromMemory(bytes.data(), bytes.size(), 0, "glb");
  INFO(importer.GetErrorString());
  REQUIRE(scene != nullptr);
  std::map<std::string, Part> parts;
  collect(*scene, *scene->mRootNode, aiMatrix4x4(), parts);
  return parts;
}

std::string name_of_layer(std::size_t layer) { return "Layer " + std::to_string(layer); }

// Six times the volume between triangles and the origin; of a closed surface whose triangles are counterclockwise from
// outside, positive.
double volume_of(const Part& part) {
  double six = 0.0;
  for (const Triangle& t : part.triangles) six += glm::dot(t.a, glm::cross(t.b, t.c));
  return six / 6.0;
}

double distance_to_triangle(const Vec3& place, const Triangle& t) {
  // Into the plane; where that is outside the triangle, to the nearest edge.
  const Vec3 normal = glm::normalize(glm::cross(t.b - t.a, t.c - t.a));
  const double height = glm::dot(place - t.a, normal);
  const Vec3 foot = place - height * normal;
  const auto inside = [&](const Vec3& from, const Vec3& to) {
    return glm::dot(glm::cross(to - from, foot - from), normal) >= 0.0;
  };
  if (inside(t.a, t.b) && inside(t.b, t.c) && inside(t.c, t.a)) return std::abs(height);
  const auto to_edge = [&](const Vec3& from, const Vec3& to) {
    const double share = std::clamp(glm::dot(place - from, to - from) / glm::dot(to - from, to - from), 0.0, 1.0);
    return glm::length(place - from - share * (to - from));
  };
  return std::min({to_edge(t.a, t.b), to_edge(t.b, t.c), to_edge(t.c, t.a)});
}

// A place on the fiber's surface: off its middle, square to its course, at an angle from outward.
Vec3 on_surface(const Build& build, const NodePlaces& places, std::size_t node, double angle) {
  const Vec3 along = glm::normalize(places.at(node + 1) - places.at(node - 1)), out = places.outward(node);
  const Vec3 up = glm::normalize(out - glm::dot(out, along) * along), side = glm::cross(along, up);
  return places.at(node) + 0.5 * build.fiber_diameter_mm * (std::cos(angle) * up + std::sin(angle) * side);
}

double nearest(const Part& part, const Vec3& place) {
  double least = 1e9;
  for (const Triangle& t : part.triangles) least = std::min(least, distance_to_triangle(place, t));
  return least;
}

}  // namespace

TEST_CASE("a model's surface lies within the stated deviation of the fiber's") {
  const SceneSource source = small_source(1.0, 60.0);
  const Build& build = source.build();
  GlbSettings settings;
  settings.numbers = Numbers::floats;
  for (const double tolerance : {0.01, 0.07, 0.25}) {
    settings.tolerance_mm = tolerance;
    const Glb glb = made(source, settings);
    CHECK(glb.facts.deviation_mm <= 2.0 * tolerance + 0.05);  // of line and of sides; the stations allow no less
    auto parts = read(bytes_of(glb));
    const NodePlaces places(build);
    double farthest = 0.0;
    for (std::size_t stroke = 0; stroke < build.strokes.size(); ++stroke) {
      const Part& part = parts[name_of_layer(stroke + 1)];
      const std::size_t first = build.strokes[stroke].first_node + 1, end = build.end_of(stroke) - 1;
      for (std::size_t node = first; node < end; node += (end - first) / 12 + 1) {
        for (const double angle : {0.3, 2.5, 4.4})
          farthest = std::max(farthest, nearest(part, on_surface(build, places, node, angle)));
      }
    }
    INFO("tolerance " << tolerance << ", stated " << glb.facts.deviation_mm);
    CHECK(farthest <= glb.facts.deviation_mm);
    CHECK(farthest > 0.0);
  }
}

TEST_CASE("a model is closed, faces outward, and has the volume of fiber and spool") {
  const SceneSource source = small_source(1.0, 60.0);
  GlbSettings settings;
  settings.numbers = Numbers::floats;
  settings.sides = 16;
  settings.tolerance_mm = 0.001;
  auto parts = read(bytes_of(made(source, settings)));
  Part fiber;
  for (std::size_t layer = 1; layer <= source.build().strokes.size(); ++layer) {
    const Part& part = parts[name_of_layer(layer)];
    fiber.triangles.insert(fiber.triangles.end(), part.triangles.begin(), part.triangles.end());
    for (const Vec3& normal : part.normals) CHECK(glm::length(normal) == Approx(1.0).margin(1e-4));
  }
  // A polygon of 16 sides has n / (2 pi) sin(2 pi / n) of its circle's area: elementary geometry, from memory.
  const double share = 16.0 / (2.0 * std::numbers::pi) * std::sin(2.0 * std::numbers::pi / 16.0);
  const double section = 0.25 * std::numbers::pi * source.d() * source.d() * share;
  const double length = source.line().at(source.build().nodes.size() - 1);
  CHECK(volume_of(fiber) == Approx(section * length).epsilon(0.003));

  // The barrel: a ring from bore to surface, over the inside width.
  const Spool& spool = source.plan().spool();
  const double outer = 0.5 * spool.barrel_diameter_mm, inner = bore_share * outer;
  CHECK(volume_of(parts["Barrel"]) ==
        Approx(std::numbers::pi * (outer * outer - inner * inner) * spool.inside_width_mm).epsilon(0.001));
  CHECK(volume_of(parts["Left flange"]) > 0.0);
  CHECK(volume_of(parts["Right flange"]) == Approx(volume_of(parts["Left flange"])).epsilon(1e-4));
}

TEST_CASE("each layer of a model has its colour in pictures: dark on the barrel, light on top") {
  const SceneSource source = small_source(1.0, 120.0);
  const std::size_t layers = source.build().strokes.size();
  REQUIRE(layers > 3);
  GlbSettings settings;
  settings.numbers = Numbers::floats;
  const std::string bytes = bytes_of(made(source, settings));
  Assimp::Importer importer;
  const aiScene* scene = importer.ReadFileFromMemory(bytes.data(), bytes.size(), 0, "glb");
  REQUIRE(scene != nullptr);
  // glTF's factors are linear light: the transfer function of sRGB (IEC 61966-2-1).
  const auto linear = [](std::uint8_t byte) {
    const double v = byte / 255.0;
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
  };
  std::size_t found = 0;
  for (unsigned i = 0; i < scene->mNumMaterials; ++i) {
    const std::string name = scene->mMaterials[i]->GetName().C_Str();
    for (std::size_t layer = 1; layer <= layers; ++layer) {
      if (name != name_of_layer(layer)) continue;
      aiColor4D colour;
      REQUIRE(scene->mMaterials[i]->Get(AI_MATKEY_BASE_COLOR, colour) == aiReturn_SUCCESS);
      const Rgba expected = layer_rgba(layer, layers);
      CAPTURE(name);
      CHECK(colour.r == Approx(linear(expected.r)).margin(1e-3));
      CHECK(colour.g == Approx(linear(expected.g)).margin(1e-3));
      CHECK(colour.b == Approx(linear(expected.b)).margin(1e-3));
      ++found;
    }
  }
  CHECK(found == layers);
}

TEST_CASE("a model that would be too large gets coarser, then loses layers next to the barrel, and says so") {
  const SceneSource source = small_source(1.0, 120.0);
  GlbSettings settings;
  const Glb fine = made(source, settings);
  CHECK(fine.facts.sides == 6);
  CHECK(fine.facts.note.empty());
  double before = fine.facts.deviation_mm;
  std::size_t first_before = 1;
  bool lost = false;
  const double spool = 260e3, all = static_cast<double>(fine.size());
  for (const double share : {0.7, 0.4, 0.15}) {
    settings.most_bytes = spool + share * (all - spool);
    const Glb glb = made(source, settings);
    CHECK(static_cast<double>(glb.size()) <= settings.most_bytes);
    CHECK(glb.facts.deviation_mm >= before);
    CHECK(glb.facts.first_layer >= first_before);
    CHECK(glb.facts.last_layer == source.build().strokes.size());
    CHECK_FALSE(glb.facts.note.empty());
    lost = glb.facts.first_layer > 1;
    CHECK((glb.facts.note.find("left out") != std::string::npos) == lost);
    before = glb.facts.deviation_mm;
    first_before = glb.facts.first_layer;
  }
  CHECK(lost);
}

TEST_CASE("what was asked for is not made coarser, but refused with the size and what helps") {
  const SceneSource source = small_source(1.0, 120.0);
  GlbSettings settings;
  settings.sides = 32;
  settings.most_bytes = 500e3;
  Progress progress;
  const Result<Glb> glb = make_glb(source, settings, progress);
  REQUIRE_FALSE(glb.ok());
  const std::string words = glb.issues().front().what;
  for (const char* const part : {"MB", "500 kB", "--sides (now 32)", "--tolerance", "--layers", "--at-most"})
    CHECK(words.find(part) != std::string::npos);
}

TEST_CASE("the same wind gives the same bytes") {
  const SceneSource source = small_source();
  CHECK(bytes_of(made(source, {})) == bytes_of(made(source, {})));
}

}  // namespace laywright

// Shades the wound surface. Where a pixel is wider than a column, normals and colours come from a coarser level, so
// that nothing flickers; what the normals lose there shines as a streak, as many fine fibers do.
uniform sampler2D skin;  // colour times cover, and cover; the levels side by side, a spare column at either end of each
uniform sampler2D bent;  // normal along x, slope around, openness
uniform usampler2D ids;  // finest level alone
uniform ivec2 grid_size;  // columns and rows of the finest level
uniform vec2 grid;        // x of the left edge of column 0, and columns per mm
uniform vec2 atlas_size;
uniform int level_starts[12];
uniform int levels;
uniform float columns_per_fiber;
uniform vec3 ground;  // colour of the bare barrel
uniform float opacity;
uniform mat4 to_eye;

in vec2 at;
in vec3 eye_position;

layout(location = 0) out vec4 color;
layout(location = 1) out uint id;

vec2 place_in(int level, float column, float row) {
  float width = float(max(grid_size.x >> level, 1));
  float inside = clamp(column / float(1 << level), 0.0, width);
  return vec2(float(level_starts[level]) + inside, row + 0.5) / atlas_size;
}

void main() {
  float column = (at.x - grid.x) * grid.y;
  float row = at.y / (2.0 * pi) * float(grid_size.y);
  row -= floor(row / float(grid_size.y)) * float(grid_size.y);
  float footprint = length(vec2(dFdx(column), dFdy(column)));
  float depth = clamp(log2(max(footprint, 1.0)) + 0.3, 0.0, float(levels - 1));
  int level = int(depth);
  vec2 fine = place_in(level, column, row), coarse = place_in(min(level + 1, levels - 1), column, row);
  vec4 look = mix(textureLod(skin, fine, 0.0), textureLod(skin, coarse, 0.0), depth - float(level));
  vec4 bend = mix(textureLod(bent, fine, 0.0), textureLod(bent, coarse, 0.0), depth - float(level));

  vec3 outward = vec3(0.0, cos(at.y), sin(at.y));
  vec3 around = vec3(0.0, -sin(at.y), cos(at.y));
  vec2 lean = (bend.xy * 255.0 - 128.0) / 127.0;
  vec3 normal = normalize(vec3(lean.x, 0.0, 0.0) + outward * sqrt(max(1.0 - lean.x * lean.x, 0.02)) - around * lean.y);
  vec3 to_camera = -sight_to(eye_position);
  vec3 eye_normal = mat3(to_eye) * normal;

  // One where a fiber is thinner than two pixels.
  float unresolved = smoothstep(0.15, 0.5, footprint / columns_per_fiber);
  vec3 albedo = to_linear(look.rgb + (1.0 - look.a) * ground);
  float key = smoothstep(-0.1, 0.5, dot(eye_normal, key_direction));
  vec3 light = lit(albedo, eye_normal, to_camera, bend.z, 0.25 * look.a * (1.0 - unresolved)) +
               0.20 * unresolved * look.a * key * streak(mat3(to_eye) * around, to_camera);
  color = vec4(to_srgb(light), 1.0) * opacity;
  id = texelFetch(ids, ivec2(clamp(int(floor(column)), 0, grid_size.x - 1), int(row + 0.5) % grid_size.y), 0).r;
}

// Shades the wound surface. Where a pixel is wider than a column, normals and colours come from a coarser level, so
// that nothing flickers; what the normals lose there shines as a streak, as many fine fibers do.
uniform sampler2D skin;  // colour times cover, and cover; the levels side by side, a spare column at either end of each
uniform sampler2D bent;  // normal along x, slope around, openness
#ifdef IDS
uniform usampler2D ids;  // finest level alone
#endif
uniform vec2 grid_size;   // columns and rows of the finest level
uniform vec2 per_atlas;   // one over the atlas's size
uniform vec2 starts[12];  // of each level: its first column, and its columns
uniform float levels;
uniform vec2 dither;      // fine pixels to a pixel, and 0 to 1: where among the frames that are averaged this one is
uniform float pixel;      // of a pixel that is seen, in pixels that are drawn
uniform float fibers_per_column;
uniform vec3 ground;      // colour of the bare barrel
uniform float opacity;
uniform vec2 sheen;      // shares: metal, clear
uniform vec3 eye_along;   // the spool's axis in eye space

in vec2 texel;
in vec3 eye_position;
in vec3 eye_outward;

layout(location = 0) out vec4 color;
#ifdef IDS
layout(location = 1) out uint id;
#endif

// Levels are not blended in a pixel, but among the pixels and frames that make up one that is seen: each takes the
// nearest, as seen from another place between two levels.
float next_level_from() {
  vec2 spot = mod(floor(gl_FragCoord.xy), dither.x);
  return (spot.x + spot.y * dither.x + dither.y) / (dither.x * dither.x);
}

void main() {
  vec2 slope = vec2(dFdx(texel.x), dFdy(texel.x));
  float footprint = sqrt(dot(slope, slope)) * pixel;
  float level = floor(clamp(log2(max(footprint, 1.0)) + 0.3 + next_level_from(), 0.0, levels - 1.0));
  vec2 span = starts[int(level)];
  vec2 place = vec2(span.x + clamp(texel.x * exp2(-level), 0.0, span.y), texel.y + 0.5) * per_atlas;
  vec4 look = textureLod(skin, place, 0.0);
  vec4 bend = textureLod(bent, place, 0.0);

  vec2 lean = (bend.xy * 255.0 - 128.0) / 127.0;
  vec3 outward = eye_outward;
  vec3 around = cross(eye_along, outward);
  vec3 normal = normalize(eye_along * lean.x + outward * sqrt(max(1.0 - lean.x * lean.x, 0.02)) - around * lean.y);
  vec3 to_camera = -sight_to(eye_position);

  // One where a fiber is thinner than two pixels.
  float unresolved = smoothstep(0.15, 0.5, footprint * fibers_per_column);
  vec3 albedo = to_linear(look.rgb + (1.0 - look.a) * ground);
  float key = smoothstep(-0.1, 0.5, dot(normal, key_direction));
  vec3 light = lit(albedo, normal, to_camera, bend.z, 0.25 * look.a * (1.0 - unresolved)) +
               0.20 * unresolved * look.a * key * streak(around, to_camera);
  if (sheen.x + sheen.y > 0.0) light = polished(light, albedo, normal, to_camera, bend.z, sheen * look.a);
  color = vec4(to_srgb(light), 1.0) * opacity;
#ifdef IDS
  id = texelFetch(ids, ivec2(clamp(int(floor(texel.x)), 0, int(grid_size.x) - 1),
                             int(mod(texel.y + 0.5, grid_size.y))), 0).r;
#endif
}

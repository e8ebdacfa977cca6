// A smooth, faintly shining material; darker where a flange's face meets the wind.
uniform vec3 albedo;       // sRGB
uniform float opacity;     // 1: solid
uniform float metal;       // share of its light that it reflects as metal does
uniform vec4 wind;         // from x, to x, outer radius of the wind there; w: reach of its shade, mm

in vec3 eye_position;
in vec3 eye_normal;
in vec3 place;
in float facing_along;

layout(location = 0) out vec4 color;
layout(location = 1) out uint id;

void main() {
  vec3 to_camera = -sight_to(eye_position);
  vec3 normal = normalize(eye_normal);
  if (dot(normal, to_camera) < 0.0) normal = -normal;
  float radius = length(place.yz);
  float middle = 0.5 * (wind.x + wind.y);
  bool inner_face = abs(facing_along) > 0.5 && (place.x < middle) == (facing_along > 0.0);
  float shade = inner_face ? 0.5 / squared(1.0 + 0.5 * max(radius - wind.z, 0.0) / wind.w) : 0.0;
  vec3 light = lit(to_linear(albedo), normal, to_camera, 1.0 - shade, 0.10);
  if (metal > 0.0) light = polished(light, to_linear(albedo), normal, to_camera, 1.0 - shade, vec2(metal, 0.0));
  float edge = 1.0 - abs(dot(normal, to_camera));
  // Glass shows its edges: what is seen at a grazing angle covers more.
  float cover = opacity >= 1.0 ? 1.0 : mix(opacity, 0.75, edge * edge * edge);
  color = vec4(to_srgb(light) * cover, cover);
  id = 0xFFFFFFFFu;
}

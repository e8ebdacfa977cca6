// A filled circle, a little darker towards its rim.
uniform vec2 x_range;
uniform float brightness;
uniform float opacity;
uniform vec3 ground;

in vec2 offset;
in float x;
flat in vec4 colour;
flat in uint disc_node;

layout(location = 0) out vec4 color;
layout(location = 1) out uint id;

void main() {
  float squared = dot(offset, offset);
  if (squared > 1.0 || x < x_range.x || x > x_range.y) discard;
  vec3 albedo = to_linear(mix(ground, colour.rgb, colour.a));
  color = vec4(to_srgb(albedo * brightness * mix(1.0, 0.55, squared * squared * squared)), 1.0) * opacity;
  id = disc_node;
}

// Fiber in its colour, dark between fibers, nothing above the wind.
uniform sampler2D picture;
uniform usampler2D ids;
uniform vec2 x_range;
uniform bool picks;        // false where circles lie over it: they know better
uniform float brightness;  // of the face under the light

in vec2 at;
in vec2 place;

layout(location = 0) out vec4 color;
layout(location = 1) out uint id;

void main() {
  vec4 look = texture(picture, at);
  if (look.a < 0.5 || place.x < x_range.x || place.x > x_range.y) discard;
  color = vec4(to_srgb(to_linear(look.rgb / look.a) * brightness), 1.0);
  id = 0xFFFFFFFFu;
  if (picks) id = texelFetch(ids, min(ivec2(at * vec2(textureSize(ids, 0))), textureSize(ids, 0) - 1), 0).r;
}

uniform sampler2D picture;  // columns of radius by rows of angle
uniform usampler2D ids;
uniform vec2 radii;  // of the left edge of column 0, and columns per mm
uniform float brightness;

in vec2 at;

layout(location = 0) out vec4 color;
layout(location = 1) out uint id;

void main() {
  ivec2 size = textureSize(ids, 0);
  float row = fract(at.y / (2.0 * pi)) * float(size.y);
  float column = (at.x - radii.x) * radii.y;
  vec4 look = texture(picture, vec2(column, row + 0.5) / vec2(size));
  if (look.a < 0.5) discard;
  color = vec4(to_srgb(to_linear(look.rgb / look.a) * brightness), 1.0);
  id = texelFetch(ids, ivec2(clamp(int(column), 0, size.x - 1), int(row + 0.5) % size.y), 0).r;
}

// The wound surface as a grid over x and angle, whose radius comes from the height field.
uniform sampler2D radii;   // columns of x (of the mesh's level) by rows of angle
uniform ivec2 field_size;  // columns and rows of it
uniform vec2 columns;      // x of the left edge of its first column, and columns per mm
uniform vec4 window;       // what is drawn: from x, to x, from angle, to angle
uniform float sink;        // mm inward: under strands that are drawn round
uniform vec2 grid;         // of the look: x of the left edge of its first column, and columns per mm
uniform vec2 grid_size;    // columns and rows of it
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec2 place;  // 0 to 1 along x and along the angle

out vec2 texel;  // column and row in the grid, in texels
out vec3 eye_position;
out vec3 eye_outward;

float radius_at(float x, float angle) {
  float column = clamp((x - columns.x) * columns.y - 0.5, 0.0, float(field_size.x - 1));
  float row = angle / (2.0 * pi) * float(field_size.y);
  float low = floor(column), before = floor(row);
  int c0 = int(low), c1 = min(c0 + 1, field_size.x - 1);
  int s0 = int(mod(before, float(field_size.y))), s1 = int(mod(before + 1.0, float(field_size.y)));
  vec2 ends = mix(vec2(texelFetch(radii, ivec2(c0, s0), 0).r, texelFetch(radii, ivec2(c1, s0), 0).r),
                  vec2(texelFetch(radii, ivec2(c0, s1), 0).r, texelFetch(radii, ivec2(c1, s1), 0).r), row - before);
  return mix(ends.x, ends.y, column - low);
}

void main() {
  vec2 at = mix(window.xz, window.yw, place);
  vec3 outward = on_spool(0.0, at.y, 1.0);
  vec4 eye = to_eye * vec4(vec3(at.x, 0.0, 0.0) + outward * (radius_at(at.x, at.y) - sink), 1.0);
  texel = vec2((at.x - grid.x) * grid.y, at.y / (2.0 * pi) * grid_size.y);
  eye_position = eye.xyz;
  eye_outward = mat3(to_eye) * outward;
  gl_Position = to_clip * eye;
}

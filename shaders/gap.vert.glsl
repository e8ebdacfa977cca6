// Strips of surface between two turns, each a row of the height field high.
uniform float half_row;  // rad
uniform float lift;      // mm outward, so that it does not sink into the fiber below
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec2 corner;    // along 0 or 1, around -1 or 1
layout(location = 1) in vec4 strip;     // from x, to x, angle, radius
layout(location = 2) in float covers;   // opacity

out float cover;

void main() {
  cover = covers;
  float x = mix(strip.x, strip.y, corner.x);
  gl_Position = to_clip * (to_eye * vec4(on_spool(x, strip.z + corner.y * half_row, strip.w + lift), 1.0));
}

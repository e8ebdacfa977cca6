// Strips of surface between two turns, each a row of the height field high.
uniform float lift;  // mm outward, so that it does not sink into the fiber below
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec2 corner;  // along 0 or 1, around -1 or 1
layout(location = 1) in vec4 strip;   // from x, to x, from angle, to angle
layout(location = 2) in vec2 look;    // radius, opacity

out float cover;

void main() {
  cover = look.y;
  float x = mix(strip.x, strip.y, corner.x);
  float angle = mix(strip.z, strip.w, 0.5 + 0.5 * corner.y);
  gl_Position = to_clip * (to_eye * vec4(on_spool(x, angle, look.x + lift), 1.0));
}

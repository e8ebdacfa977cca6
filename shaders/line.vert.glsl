// A line of even width on the screen, hidden by what stands before it.
uniform mat4 to_eye;
uniform mat4 to_clip;
uniform mat4 from_eye;
uniform vec2 screen;       // fine pixels
uniform float width;       // fine pixels
uniform float toward_eye;  // share of the distance that it is drawn nearer, so that it does not sink into a surface

layout(location = 0) in vec2 corner;  // along 0 or 1, across -1 or 1
layout(location = 1) in vec4 from;    // and length of the line so far, mm
layout(location = 2) in vec4 to;

out float travelled;
out vec3 place;  // where it is drawn, in space

void main() {
  vec4 a_seen = vec4((to_eye * vec4(from.xyz, 1.0)).xyz * (1.0 - toward_eye), 1.0);
  vec4 b_seen = vec4((to_eye * vec4(to.xyz, 1.0)).xyz * (1.0 - toward_eye), 1.0);
  vec4 a = to_clip * a_seen, b = to_clip * b_seen;
  vec2 run = (b.xy / b.w - a.xy / a.w) * screen;
  run = length(run) > 1e-6 ? normalize(run) : vec2(1.0, 0.0);
  vec4 end = corner.x < 0.5 ? a : b;
  vec2 shift = (vec2(-run.y, run.x) * corner.y + run * (corner.x * 2.0 - 1.0)) * width / screen;
  place = (from_eye * mix(a_seen, b_seen, corner.x)).xyz;
  travelled = mix(from.w, to.w, corner.x);
  gl_Position = end + vec4(shift * end.w, 0.0, 0.0);
}

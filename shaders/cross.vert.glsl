// The plane across the axis: a ring in angle and radius.
uniform float x;
uniform vec4 window;  // from radius, to radius, from angle, to angle
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec2 place;  // 0 to 1 along radius and angle

out vec2 at;  // radius and angle

void main() {
  at = mix(window.xz, window.yw, place);
  gl_Position = to_clip * (to_eye * vec4(on_spool(x, at.y, at.x), 1.0));
}

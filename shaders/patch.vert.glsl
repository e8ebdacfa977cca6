// A finding's patch of the surface: a piece of a cylinder.
uniform vec4 window;  // from x, to x, from angle, to angle
uniform float radius;
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec2 place;  // 0 to 1 along x and the angle

out vec2 at;  // x and arc, mm from the middle

void main() {
  vec2 x_angle = mix(window.xz, window.yw, place);
  at = vec2(x_angle.x, x_angle.y * radius);
  gl_Position = to_clip * (to_eye * vec4(on_spool(x_angle.x, x_angle.y, radius), 1.0));
}

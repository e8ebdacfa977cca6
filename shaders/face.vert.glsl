// A cut's face: a plane through the axis, in x and radius.
uniform vec4 window;  // from x, to x, from radius, to radius
uniform float angle;
uniform mat4 to_eye;
uniform mat4 to_clip;

out vec2 at;     // in the image, 0 to 1
out vec2 place;  // x and radius

void main() {
  at = vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1));
  place = mix(window.xz, window.yw, at);
  gl_Position = to_clip * (to_eye * vec4(on_spool(place.x, angle, place.y), 1.0));
}

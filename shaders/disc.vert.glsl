// Turns in a cut's face, as true circles.
uniform float radius;
uniform float angle;
uniform float lift;  // mm out of the face, towards the viewer
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec2 corner;  // -1 to 1
layout(location = 1) in vec2 centre;  // x and radius
layout(location = 2) in uint node;
layout(location = 3) in vec4 tint;

out vec2 offset;  // in radii
out float x;
flat out vec4 colour;
flat out uint disc_node;

void main() {
  offset = corner;
  colour = tint;
  disc_node = node;
  vec2 place = centre + corner * radius;
  x = place.x;
  vec3 outward = vec3(0.0, -sin(angle), cos(angle)) * lift;
  gl_Position = to_clip * (to_eye * vec4(on_spool(place.x, angle, place.y) + outward, 1.0));
}

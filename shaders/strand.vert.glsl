// A straight piece of fiber as a quad that faces the eye and contains the piece's axis: since round fibers do not
// penetrate each other, whichever axis is nearer is in front, and the quad's depth is the right one.
uniform mat4 to_eye;
uniform mat4 to_clip;
uniform float radius;
uniform int stations;

layout(location = 0) in vec2 corner;   // along 0 or 1, across -1 or 1
layout(location = 1) in vec4 earlier;  // x and r: one node before, and the beginning
layout(location = 2) in vec4 later;    // the end, and one node after
layout(location = 3) in vec2 part;     // of the piece that is drawn, 0 to 1
layout(location = 4) in uint node;     // at its beginning
layout(location = 5) in vec4 color_a;
layout(location = 6) in vec4 color_b;

flat out vec3 axis_from;
flat out vec3 axis_to;
flat out vec3 tangent_from;
flat out vec3 tangent_to;
flat out vec3 outward;
flat out vec4 tint_a;
flat out vec4 tint_b;
flat out uint first_node;
flat out vec2 shown;
out vec3 eye_position;

vec3 place_of(vec2 x_and_r, uint station) {
  float angle = 2.0 * pi * float(station % uint(stations)) / float(stations);
  return (to_eye * vec4(on_spool(x_and_r.x, angle, x_and_r.y), 1.0)).xyz;
}

void main() {
  vec3 before = place_of(earlier.xy, node + uint(stations) - 1u);
  axis_from = place_of(earlier.zw, node);
  axis_to = place_of(later.xy, node + 1u);
  vec3 after = place_of(later.zw, node + 2u);
  vec3 piece = axis_to - axis_from;
  tangent_from = normalize(axis_to - before);
  tangent_to = normalize(after - axis_from);
  float angle = 2.0 * pi * float(node % uint(stations)) / float(stations);
  outward = mat3(to_eye) * vec3(0.0, cos(angle), sin(angle));
  tint_a = color_a;
  tint_b = color_b;
  first_node = node;
  shown = part;

  // A little beyond ends that go on, so that no crack shows on the outer side of a bend.
  float overlap = radius * 0.15 / max(length(piece), 1e-6);
  float along = corner.x < 0.5 ? (part.x > 0.0 ? part.x : -overlap) : (part.y < 1.0 ? part.y : 1.0 + overlap);
  vec3 centre = axis_from + piece * along;
  vec3 sight = sight_to(centre);
  vec3 side = normalize(cross(piece, sight));
  // Seen along its axis, at the horizon, a fiber reaches beyond the ends of its axis on the screen.
  vec3 onward = cross(sight, side);
  float beyond = radius * abs(dot(piece, sight)) / max(length(piece), 1e-6);
  beyond *= (corner.x < 0.5 ? -1.0 : 1.0) * sign(dot(onward, piece));
  eye_position = centre + side * (corner.y * radius * 1.03) + onward * beyond;
  gl_Position = to_clip * vec4(eye_position, 1.0);
}

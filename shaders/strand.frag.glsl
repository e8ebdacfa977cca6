// Where the line of sight meets the round fiber, from the quad's own point on: started at the eye, single precision
// would leave specks.
uniform float radius;
uniform float opacity;
uniform vec2 x_range;  // of what is shown
uniform vec4 x_row;    // x of a place in eye space
uniform vec3 ground;
uniform vec2 sheen;   // shares: metal, clear

flat in vec3 axis_from;
flat in vec3 axis_to;
flat in vec3 tangent_from;
flat in vec3 tangent_to;
flat in vec3 outward;
flat in vec4 tint_a;
flat in vec4 tint_b;
flat in uint first_node;
flat in vec2 shown;
in vec3 eye_position;

layout(location = 0) out vec4 color;
layout(location = 1) out uint id;

void main() {
  vec3 sight = sight_to(eye_position);
  vec3 piece = axis_to - axis_from;
  float span = length(piece);
  vec3 along = piece / span;
  vec3 from_axis = eye_position - axis_from;
  vec3 across = from_axis - along * dot(from_axis, along);
  vec3 step_across = sight - along * dot(sight, along);
  float a = dot(step_across, step_across), b = dot(step_across, across), c = dot(across, across) - radius * radius;
  float inside = b * b - a * c;
  if (inside < 0.0 || a < 1e-8) discard;
  vec3 hit = eye_position + sight * ((-b - sqrt(inside)) / a);

  float share = dot(hit - axis_from, along) / span;
  // Beyond its end the next piece goes on, in another direction.
  float overlap = radius * 0.15 / span;
  if (share < (shown.x > 0.0 ? shown.x : -overlap) || share > (shown.y < 1.0 ? shown.y : 1.0 + overlap)) discard;
  float x = dot(x_row, vec4(hit, 1.0));
  if (x < x_range.x || x > x_range.y) discard;

  float between = clamp(share, 0.0, 1.0);
  vec3 tangent = normalize(mix(tangent_from, tangent_to, between));
  vec3 normal = hit - axis_from - along * (share * span);
  normal = normalize(normal - tangent * dot(normal, tangent));
  // Neighbours and what lies below take the light from the flanks.
  float openness = mix(0.22, 1.0, smoothstep(-0.15, 0.85, dot(normal, outward)));
  vec4 tint = mix(tint_a, tint_b, between);
  vec3 albedo = to_linear(mix(ground, tint.rgb, tint.a));
  vec3 light = lit(albedo, normal, -sight, openness, 0.30);
  if (sheen.x + sheen.y > 0.0) light = polished(light, albedo, normal, -sight, openness, sheen);
  color = vec4(to_srgb(light), 1.0) * opacity;
  id = first_node + (share < 0.5 ? 0u : 1u);
}

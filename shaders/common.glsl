// Before every shader: what they share. The version line stands before this, 330 core or 300 es.

const float pi = 3.14159265358979;

// sRGB bytes are what people see evenly; light adds up linearly. A square is near enough to sRGB's own curve, and its
// way back is exact and cheap.
vec3 to_linear(vec3 srgb) { return srgb * srgb; }
vec3 to_srgb(vec3 linear) { return sqrt(clamp(linear, 0.0, 1.0)); }

float squared(float x) { return x * x; }

// A point on the spool at an angle from the upward direction, x along the axis.
vec3 on_spool(float x, float angle, float radius) { return vec3(x, radius * cos(angle), radius * sin(angle)); }

uniform float parallel;  // 1 for a parallel picture, 0 for a perspective

// Direction in which a place is looked at, in eye space.
vec3 sight_to(vec3 eye_position) { return mix(normalize(eye_position), vec3(0.0, 0.0, -1.0), parallel); }

// Light, seen from the eye: a large key light above the left shoulder, a weak one from the right, and the room, which
// is brighter above. `openness`: how much of the room a place sees, 0 to 1.
const vec3 key_direction = vec3(-0.422, 0.625, 0.657);
const vec3 fill_direction = vec3(0.779, 0.156, 0.607);

vec3 room_light(vec3 normal, float openness) {
  return mix(vec3(0.30, 0.295, 0.29), vec3(0.52, 0.535, 0.56), 0.5 + 0.5 * normal.y) * openness;
}

vec3 lit(vec3 albedo, vec3 normal, vec3 to_eye, float openness, float gloss) {
  float key = max(dot(normal, key_direction), 0.0) * mix(0.35, 1.0, openness);
  float fill = max(dot(normal, fill_direction), 0.0) * openness;
  vec3 halfway = normalize(key_direction + to_eye);
  float sixteenth = squared(squared(squared(squared(max(dot(normal, halfway), 0.0)))));
  float shine = sixteenth * sixteenth * sixteenth * gloss * openness;
  return albedo * (room_light(normal, openness) + vec3(0.60, 0.585, 0.56) * key + vec3(0.30, 0.31, 0.33) * fill) +
         vec3(shine);
}

// The room as a metal shows it, in its own colour: a dark floor, a bright window above. And the edges of what is clear,
// which send back what comes in from behind.
vec3 polished(vec3 light, vec3 albedo, vec3 normal, vec3 to_eye, float openness, vec2 sheen) {
  float facing = max(dot(normal, to_eye), 0.0);
  float up = 2.0 * facing * normal.y - to_eye.y;  // of the direction that is reflected
  float shows = mix(0.12, 1.05, smoothstep(-0.5, 0.9, up)) + 0.5 * squared(squared(1.0 - facing));
  vec3 metal = mix(light * 0.45, albedo * shows, 0.62) * mix(0.45, 1.0, openness) +
               mix(albedo, vec3(1.0), 0.25) * 0.55 * smoothstep(0.62, 0.95, up) * openness;
  vec3 clear = light + (0.22 * squared(1.0 - facing) + 0.35 * smoothstep(0.86, 0.98, up)) * openness;
  return mix(mix(light, clear, sheen.y), metal, sheen.x);
}

// What fibers finer than a pixel reflect: a streak across them, wherever a halfway direction stands square on them.
float streak(vec3 along, vec3 to_eye) {
  float across = dot(along, normalize(key_direction + to_eye));
  float eighth = squared(squared(squared(max(1.0 - across * across, 0.0))));
  return squared(squared(eighth)) * eighth;
}

uniform vec4 tint;
uniform float dash_mm;    // of ink and gap; 0: a full line
uniform float cut;        // 1: nothing is drawn where cuts have taken the wind away, though it is drawn nearer
uniform vec2 shown[4];    // what the cuts leave around the spool: from, and how far, rad
uniform float sectors;
uniform vec2 x_range;

in float travelled;
in vec3 place;

layout(location = 0) out vec4 color;

bool is_shown() {
  if (place.x < x_range.x || place.x > x_range.y) return false;
  float angle = atan(place.z, place.y);
  for (int i = 0; i < 4; ++i) {
    if (float(i) < sectors && mod(angle - shown[i].x, 2.0 * pi) <= shown[i].y) return true;
  }
  return false;
}

void main() {
  if (dash_mm > 0.0 && fract(travelled / dash_mm) > 0.6) discard;
  if (cut > 0.5 && !is_shown()) discard;
  color = vec4(tint.rgb, 1.0) * tint.a;
}

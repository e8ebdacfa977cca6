uniform vec4 tint;
uniform float dash_mm;  // of ink and gap; 0: a full line

in float travelled;

layout(location = 0) out vec4 color;

void main() {
  if (dash_mm > 0.0 && fract(travelled / dash_mm) > 0.6) discard;
  color = vec4(tint.rgb, 1.0) * tint.a;
}

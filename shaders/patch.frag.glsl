// Lit (fill), hatched, or neither: outlines are lines.
uniform vec4 tint;        // colour and opacity of the fill
uniform float hatch;      // 1: lines aslant
uniform float stripe_mm;  // width of a stripe and its gap

in vec2 at;

layout(location = 0) out vec4 color;

void main() {
  float stripe = fract((at.x + at.y) / stripe_mm);
  float cover = hatch > 0.5 ? (stripe < 0.42 ? 1.0 : 0.15) : 1.0;
  color = vec4(tint.rgb, 1.0) * (tint.a * cover);
}

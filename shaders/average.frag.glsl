// The mean of the fine pixels under one pixel of the picture.
uniform sampler2D fine;
uniform int factor;

out vec4 color;

void main() {
  ivec2 corner = ivec2(gl_FragCoord.xy) * factor;
  vec4 sum = vec4(0.0);
  for (int y = 0; y < factor; ++y)
    for (int x = 0; x < factor; ++x) sum += texelFetch(fine, corner + ivec2(x, y), 0);
  color = sum / float(factor * factor);
}

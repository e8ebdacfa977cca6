// Figures and words over the picture, as the drawing library keeps them: blue first, rows from above.
uniform sampler2D sheet;

out vec4 color;

void main() {
  ivec2 size = textureSize(sheet, 0);
  ivec2 at = ivec2(gl_FragCoord.xy);
  color = texelFetch(sheet, ivec2(at.x, size.y - 1 - at.y), 0).bgra;
}

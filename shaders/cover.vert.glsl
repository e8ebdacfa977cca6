// One triangle that covers the picture, behind all that is drawn.
void main() {
  vec2 corner = vec2(float((gl_VertexID << 1) & 2), float(gl_VertexID & 2));
  gl_Position = vec4(corner * 2.0 - 1.0, 1.0, 1.0);
}

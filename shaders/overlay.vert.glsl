// Parts of the picture, their corners given in clip space.
layout(location = 0) in vec2 corner;

void main() { gl_Position = vec4(corner, 0.0, 1.0); }

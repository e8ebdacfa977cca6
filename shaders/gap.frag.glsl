uniform vec3 tint;

in float cover;

layout(location = 0) out vec4 color;

void main() { color = vec4(tint, 1.0) * cover; }

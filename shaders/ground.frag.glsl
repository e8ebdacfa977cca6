// The ground behind everything, brighter above.
uniform vec3 top;
uniform vec3 foot;
uniform float height;

layout(location = 0) out vec4 color;

void main() { color = vec4(mix(foot, top, gl_FragCoord.y / height), 1.0); }

// Barrel and flanges.
uniform mat4 to_eye;
uniform mat4 to_clip;

layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;

out vec3 eye_position;
out vec3 eye_normal;
out vec3 place;
out float facing_along;  // along the axis: 1 to the right

void main() {
  vec4 eye = to_eye * vec4(position, 1.0);
  eye_position = eye.xyz;
  eye_normal = mat3(to_eye) * normal;
  place = position;
  facing_along = normal.x;
  gl_Position = to_clip * eye;
}

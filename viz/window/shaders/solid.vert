#version 330 core
// A skin of triangles in the scene's own axes, mm.
uniform mat4 clip;
uniform vec3 light;  // towards the light, unit
uniform vec4 shade;  // least and greatest factor, cosines where they begin
layout(location = 0) in vec3 point;
layout(location = 1) in vec3 normal; // zero: not lit
layout(location = 2) in vec3 value;  // of the field; 1 if there is one, 0 if not; factor of light
out vec3 v; // value, whether there is one, factor of light
void main() {
	float turned = clamp((dot(normal, light) - shade.z) / (shade.w - shade.z), 0.0, 1.0);
	v = vec3(value.xy, dot(normal, normal) > 0.25 ? value.z * mix(shade.x, shade.y, turned) : value.z);
	gl_Position = clip * vec4(point, 1.0);
}

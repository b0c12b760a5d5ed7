#version 330 core
// A skin of wood, with the gloss that runs along its grain.
uniform mat4 clip;
uniform vec3 light;   // towards the light, unit
uniform vec4 shade;   // least and greatest factor, cosines where they begin
uniform vec3 halfway; // between light and eye, unit
uniform vec3 along;   // the grain, unit
uniform vec3 gloss;   // how bright, its power, how much less a slope along the grain counts
layout(location = 0) in vec3 point;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec3 value; // mm from the joint; factor of light
out vec2 v; // mm from the joint, factor of light
void main() {
	float turned = clamp((dot(normal, light) - shade.z) / (shade.w - shade.z), 0.0, 1.0);
	vec3 n = normalize(normal - gloss.z * dot(normal, along) * along);
	float sheen = gloss.x * pow(max(dot(n, halfway), 0.0), gloss.y);
	v = vec2(value.x, value.z * (mix(shade.x, shade.y, turned) + sheen));
	gl_Position = clip * vec4(point, 1.0);
}

#version 330 core
// What takes light from the paper, in the scene's own axes, mm.
uniform mat4 clip;
layout(location = 0) in vec3 point;
layout(location = 2) in vec3 value; // the last: its share of the most that is taken
out float share;
void main() {
	share = value.z;
	gl_Position = clip * vec4(point, 1.0);
}

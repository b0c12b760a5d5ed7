#version 330 core
// Taken from the paper's red, green and blue.
uniform vec3 takes; // at most
in float share;
out vec4 seen;
void main() { seen = vec4(takes * share, 0.0); }

#version 330 core
// The picture that goes out, by the weight that it has left.
uniform sampler2D was;
uniform float left;
in vec2 uv;
out vec4 seen;
void main() { seen = vec4(texture(was, uv).rgb, left); }

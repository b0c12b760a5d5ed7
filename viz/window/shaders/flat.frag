#version 330 core
// Paint times the coverage that the atlas has there.
uniform sampler2D atlas;
in vec2 uv;
in vec4 p;
out vec4 seen;
void main() { seen = vec4(p.rgb, p.a * texture(atlas, uv).r); }

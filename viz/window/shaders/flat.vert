#version 330 core
// Triangles of the panels, in pixels from the top left of the page.
uniform vec2 page; // pixels
layout(location = 0) in vec2 place;
layout(location = 1) in vec2 inAtlas;
layout(location = 2) in vec4 paint;
out vec2 uv;
out vec4 p;
void main() {
	uv = inAtlas;
	p = paint;
	gl_Position = vec4(2.0 * place.x / page.x - 1.0, 1.0 - 2.0 * place.y / page.y, 0.0, 1.0);
}

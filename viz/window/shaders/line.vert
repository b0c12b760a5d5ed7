#version 330 core
// One stretch of a polyline as a ribbon of constant width on the screen. At a
// joint the two stretches part along the line that halves their angle, so
// that nothing is painted twice.
uniform mat4 clip;
uniform vec2 view;     // pixels
uniform float density; // pixels to a point
uniform vec3 close;    // mm: nothing before this is drawn; mm that ribbons lie before their place; the matrix's depth term

layout(location = 0) in vec4 from; // mm, and arc length there, mm
layout(location = 1) in vec4 to;
layout(location = 2) in vec3 before; // the place before from; from itself: there is none
layout(location = 3) in vec3 after;
layout(location = 4) in vec4 paint;
layout(location = 5) in vec4 style; // half width, width of the light edge (points), dash (mm), opacity of the light edge

noperspective out vec2 at; // pixels along and across, from the first end
flat out float span;       // pixels between the ends
flat out vec3 reach;       // pixels of half the width, without and with the light edge; its opacity
flat out vec4 joint;       // normals of the parting lines at both ends
flat out vec4 arc;         // mm at the ends, depth at the ends
flat out vec4 colour;
flat out float dash; // mm

vec2 pixel(vec4 p) { return p.xy / p.w * view * 0.5; }

// parting is the normal of the line between this stretch and its neighbour,
// in this one's own axes; nothing where there is no neighbour.
vec2 parting(vec3 own, vec3 other, vec2 end, vec2 along, float sense) {
	vec4 c = clip * vec4(other, 1.0);
	if (own == other || c.w < close.x) return vec2(0.0);
	vec2 d = sense * (end - pixel(c));
	if (length(d) < 1e-3) return vec2(0.0);
	vec2 n = normalize(d) + along;
	return vec2(dot(n, along), dot(n, vec2(-along.y, along.x)));
}

void main() {
	vec4 a = clip * vec4(from.xyz, 1.0), b = clip * vec4(to.xyz, 1.0);
	float sa = from.w, sb = to.w;
	bool hidden = a.w < close.x && b.w < close.x;
	bool cutA = a.w < close.x, cutB = b.w < close.x;
	if (cutA) {
		float t = (close.x - a.w) / (b.w - a.w);
		a = mix(a, b, t), sa = mix(sa, sb, t);
	} else if (cutB) {
		float t = (close.x - b.w) / (a.w - b.w);
		b = mix(b, a, t), sb = mix(sb, sa, t);
	}
	vec2 pa = pixel(a), pb = pixel(b);
	span = distance(pa, pb);
	vec2 along = span > 1e-4 ? (pb - pa) / span : vec2(1.0, 0.0);
	vec2 across = vec2(-along.y, along.x);
	joint = vec4(cutA ? vec2(0.0) : parting(from.xyz, before, pa, along, 1.0), cutB ? vec2(0.0) : parting(to.xyz, after, pb, along, -1.0));
	reach = vec3(style.x * density, (style.x + style.y) * density, style.w);
	float most = reach.y + 1.0;
	bool second = (gl_VertexID & 2) != 0;
	at = vec2(second ? span + most : -most, (gl_VertexID & 1) != 0 ? most : -most);
	arc = vec4(sa, sb, a.w, b.w);
	colour = paint;
	dash = style.z;
	vec4 end = second ? b : a;
	float z = end.z + close.z * close.y / max(end.w - close.y, 0.5 * close.x);
	vec2 p = pa + along * at.x + across * at.y;
	gl_Position = hidden ? vec4(2.0, 2.0, 2.0, 1.0) : vec4(p / (view * 0.5) * end.w, z, end.w);
}

#version 330 core
// Late wood in the light: its mean over the stretch that a pixel covers.
uniform sampler2D late; // from the joint outward, summed
uniform vec4 paint;
uniform vec3 sizes;     // mm from entry to entry of late, its last place in entries, shortest stretch
uniform vec3 takes;     // what late wood takes of red, green and blue
uniform vec3 warm;      // what shade takes less of them
in vec2 v;
out vec4 seen;

float summed(float at) {
	float s = min(abs(at) / sizes.x, sizes.y);
	int i = int(s);
	float a = texelFetch(late, ivec2(i, 0), 0).r, b = texelFetch(late, ivec2(i + 1, 0), 0).r;
	return sign(at) * mix(a, b, s - float(i));
}

void main() {
	float wide = max(length(vec2(dFdx(v.x), dFdy(v.x))), sizes.z);
	float dark = (summed(v.x + 0.5 * wide) - summed(v.x - 0.5 * wide)) / wide;
	seen = vec4(paint.rgb * (1.0 - takes * dark) * (v.y + warm * (1.0 - v.y)), paint.a);
}

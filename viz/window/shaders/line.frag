#version 330 core
// A stretch of a line with round ends, soft edges and a light edge about it,
// dashed by its length.
uniform vec3 edge; // colour of the light edge

noperspective in vec2 at;
flat in float span;
flat in vec3 reach;
flat in vec4 joint;
flat in vec4 arc;
flat in vec4 colour;
flat in float dash;
out vec4 seen;

float covered(float half_, float far) {
	return clamp(max(half_, 0.25) + 0.5 - far, 0.0, 1.0) * min(1.0, 4.0 * half_); // thin ones are fainter
}

void main() {
	if (dot(at, joint.xy) < 0.0 || dot(at - vec2(span, 0.0), joint.zw) >= 0.0 && joint.zw != vec2(0.0)) discard;
	float t = clamp(at.x / max(span, 1e-4), 0.0, 1.0);
	float far = length(vec2(at.x - t * span, at.y));
	if (dash > 0.0) {
		float u = t / arc.w;
		float s = mix(arc.x, arc.y, u / ((1.0 - t) / arc.z + u)); // mm, with perspective
		if (fract(s / (2.0 * dash)) >= 0.5) discard;
	}
	float core = colour.a * covered(reach.x, far), around = reach.z * covered(reach.y, far) * (1.0 - core);
	float all = core + around;
	if (all <= 0.0) discard;
	seen = vec4((colour.rgb * core + edge * around) / all, all);
}

#version 330 core
// The field's colour or the solid's own, in the light, and contour lines.
uniform sampler2D bands; // colours of the scale and, below, of ink on them
uniform vec4 paint;      // where there is no value
uniform vec4 scale;      // of the field: lower end, step, steps up to the upper end, the step at zero
uniform vec4 lines;      // half width, half width at zero, distance below which they fade (pixels), opacity
uniform vec3 cell;       // pixels of a dash of the lines below zero, 0: unbroken; left and top of the view, pixels from below
uniform vec3 hatch;      // 1: above zero there are slanting lines, -1: below, 0: none; lines to a pixel; where they are, 0 to 1
uniform vec3 slant;      // opacity in the middle of a line, how it falls from line to line, the most
in vec3 v;
out vec4 seen;

void main() {
	vec3 rgb = paint.rgb * v.z;
	if (v.y > 0.9995) {
		float s = (v.x - scale.x) / scale.y; // in steps from the lower end
		int tone = int(clamp(s / scale.z, 0.0, 1.0) * float(textureSize(bands, 0).x - 1) + 0.5);
		rgb = texelFetch(bands, ivec2(tone, 0), 0).rgb * v.z;
		vec2 at = vec2(gl_FragCoord.x - cell.y, cell.z - gl_FragCoord.y);
		float bare = 1.0; // of the ground, by ink of either kind
		if (hatch.x * (s - scale.w) > 0.0) {
			float off = abs(fract((at.x + at.y) * hatch.y + hatch.z) - 0.5); // of the whole way from line to line
			bare = 1.0 - clamp(slant.x - off * slant.y, 0.0, slant.z);
		}
		float k = floor(s + 0.5);
		float slope = length(vec2(dFdx(s), dFdy(s))); // steps to a pixel
		if (k > 0.5 && k < scale.z - 0.5 && slope > 1e-7 && lines.w > 0.0) {
			float cover = (k == scale.w ? lines.y : lines.x) + 0.5 - abs(s - k) / slope;
			if (cell.x > 0.0 && k < scale.w) {
				bool level = abs(dFdy(s)) > abs(dFdx(s)); // dashes follow the axis that the line runs along
				if (mod(floor((level ? at.x : at.y) / cell.x), 2.0) > 0.5) cover = 0.0;
			}
			bare *= 1.0 - lines.w * clamp(cover, 0.0, 1.0) * min(1.0, 1.0 / (slope * lines.z));
		}
		rgb = mix(texelFetch(bands, ivec2(tone, 1), 0).rgb, min(rgb, 1.0), bare);
	}
	seen = vec4(rgb, paint.a);
}

// Package cutout shows a strip of a plate by itself: what lies on both sides of two
// upright planes along the grain is taken away from a scene, and arrows at the ends say how hard
// the strip pushes along the grain against what holds the plate there.
//
// It is a picture of the plate as it is computed, whole; no strip is computed by itself.
package cutout

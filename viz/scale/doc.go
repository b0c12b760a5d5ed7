// Package scale takes values to bands, colours and words: round steps (1, 2 or 5
// times a power of ten), the scale of a legend with its bands, and numbers
// written with as many digits as they deserve. It imports the standard library
// only, so that pictures, the panels of the window and its scene all read from
// one place.
//
// Colours come from two maps built in OKLab: one from light to dark for
// quantities that count upward, and one from blue through neutral to brown for
// quantities with a sign, always symmetric about zero.
//
// The files from below: step, numbers, color, scale.
package scale

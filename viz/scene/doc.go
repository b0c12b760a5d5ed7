// Package scene turns a solved design into what a camera sees: the carved
// plate with its holes, the braces under it, bridge and strings, moved by an
// enlargement that is always stated, coloured by a field.
//
// A Skeleton holds what stays while load, strings, relief and field change;
// Skeleton.Build makes a Scene from it in some milliseconds. Everything is
// drawn as P + k u, with P the place of the unloaded part fitted without a gap,
// u its movement and k the enlargement. The gap under a relieved foot is
// enlarged by k, too: only then does what touches touch in the drawing. The
// skins of the plate lie half a thickness from the middle surface along its
// normal and turn with it.
//
// A carved form is read by its light: one key light from the left (light.go), less of it
// where a place sees little of the sky (shade.go), a soft shadow on a bench (bench.go),
// late wood and end grain (grain.go).
//
// It knows no display. Two painters draw a Scene: the one in package window
// with OpenGL, and Paint here, in plain Go. TheLooks holds what both need to
// draw the same.
package scene

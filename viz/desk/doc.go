// Package desk is the window without a display: which design, field, load,
// camera and controls are shown, what a key or the mouse does to them, and
// the Frame that results. Solving goes on beside it and never holds it up.
package desk

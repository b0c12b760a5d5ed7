// Package desk is the window without a display: which design, field, load,
// camera and controls are shown, what a key or the mouse does to them, and
// the Frame that results. Solving goes on beside it and never holds it up.
//
//	Input ─Desk.Frame→ Want ─worker→ Shown ─Desk.Frame→ Frame
//
// Package stage answers the want; desk.go holds the state and page.go lays a frame
// out: the bar (bar.go, in what form package layout says), the words
// over each drawing (heading.go), the ruler of the load (controls.go), the panel at the side (side.go), whose
// numbers are package numbers, what stands under a saved picture (truth.go), the strip with
// the cut and the foot (package section), the list of tones (package tones), the table of thicknesses (package caliper), the lesson's caption (lesson.go), sheets
// laid over all (sheets.go). labels.go finds places for words, legend.go (package legend) and
// scales.go say by what it is drawn.
//
// What a user can do stands in tables: package tool (sliders and choices, and the keys
// of the case that they set), toggles.go (what is on or off), shortcuts.go (keys of the
// keyboard); undo.go goes back over what was set, start.go begins without a design;
// the fields are those of package scene. gestures.go is the pointer over the scene, grips.go what it takes of the design there (package grip), keep.go
// what is saved, package looks what is kept from one session to the next, tell.go a line
// about each frame for tests.
package desk

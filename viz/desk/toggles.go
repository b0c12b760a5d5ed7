package desk

import (
	"unicode"

	"archload/viz/panel"
	"archload/viz/scene"
)

// toggle is something that is drawn or not: a button on the bar, a key, and a
// line on the help sheet.
type toggle struct {
	id, label, key string
	tip            string // at the button
	help           string // on the help sheet
	on             func(d *Desk) *bool
	off            func(d *Desk) string // why it cannot be turned on; nil: it always can
}

// toggles lists what is drawn besides the field.
func toggles() []toggle {
	return []toggle{
		{"contours", "Lines", "C", "a line at each step of the legend", "lines at the steps of the legend",
			func(d *Desk) *bool { return &d.looks.Contours }, nil},
		{"flow", "Paths", "W", "the ways of the load from the feet to the rim; each carries the same force", "paths of the load",
			(*Desk).pathsOn, (*Desk).offPaths},
		{"moving", "Move", "M", "beads run along the paths; a tone swings", "moving beads on the paths, a swinging tone",
			func(d *Desk) *bool { return &d.moving }, (*Desk).offMoving},
		{"forces", "Forces", "N", "arrows to one scale: what presses (blue) and what holds (red)", "arrows of the forces",
			(*Desk).forcesOn, (*Desk).offForces},
		{"strings", "Strings", "G", "draws the strings", "strings",
			func(d *Desk) *bool { return &d.want.Strings }, nil},
		{"inside", "Inner", "I", "the stress at the inner face instead of the outer one", "inner face",
			func(d *Desk) *bool { return &d.want.Inside }, (*Desk).offInside},
	}
}

// why is why it cannot be turned on; "": it can.
func (t toggle) why(d *Desk) string {
	if t.off == nil {
		return ""
	}
	return t.off(d)
}

// shortcut is the toggle's key.
func (t toggle) shortcut() shortcut {
	return shortcut{panel.LetterKey(unicode.ToLower(rune(t.key[0]))), false, t.key, t.help, func(d *Desk) {
		on := t.on(d)
		*on = !*on && t.why(d) == ""
	}}
}

// toggleWidth is what a button needs, with its key or without, points.
func (d *Desk) toggleWidth(t toggle, keyed bool) float64 {
	words := t.label
	if keyed {
		words += " [" + t.key + "]"
	}
	return d.atlas.TextWidth(panel.Body, words) + 29
}

// togglesWidth is what all buttons need in a row, points.
func (d *Desk) togglesWidth(keyed bool) float64 {
	sum := 0.0
	for _, t := range toggles() {
		sum += d.toggleWidth(t, keyed)
	}
	return sum
}

// drawToggles draws the buttons in a row, each as wide as its words.
func (d *Desk) drawToggles(row panel.Rect, keyed bool) {
	x := row.X
	for _, t := range toggles() {
		w := d.toggleWidth(t, keyed)
		c := panel.Control{ID: t.id, At: panel.Rect{X: x, Y: row.Y, W: w, H: row.H}, Label: t.label, Key: t.key, Tip: t.tip, Off: t.why(d)}
		if !keyed {
			c.Key, c.Tip = "", t.tip+" ["+t.key+"]"
		}
		d.panel.Toggle(c, t.on(d))
		x += w
	}
}

// pathsOn is whether the paths are drawn: of the load flow always.
func (d *Desk) pathsOn() *bool {
	if on := true; d.want.Field == scene.LoadFlow {
		return &on
	}
	return &d.want.Flow
}

// forcesOn is whether the forces are drawn: not where the picture is of something else.
func (d *Desk) forcesOn() *bool {
	if off := false; d.offForces() != "" {
		return &off
	}
	return &d.want.Forces
}

func (d *Desk) offForces() string {
	if d.want.Field == scene.Tone || d.want.Field == scene.Humidity {
		return "the picture shows no load; forces are drawn with the other fields"
	}
	return ""
}

func (d *Desk) offPaths() string {
	if d.want.Field == scene.LoadFlow {
		return "the load flow is drawn with its paths"
	}
	return ""
}

func (d *Desk) offMoving() string {
	if d.want.Flow || d.want.Field == scene.LoadFlow || d.want.Field == scene.Tone {
		return ""
	}
	return "there are no paths to move along; turn them on first"
}

func (d *Desk) offInside() string {
	if d.want.Field.HasFaces() {
		return ""
	}
	return "only the stresses differ between the two faces"
}

// shortcut is a key and what it does.
type shortcut struct {
	key   panel.Key
	ctrl  bool
	name  string // as printed on the key
	words string
	do    func(d *Desk)
}

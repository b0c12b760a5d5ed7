package sketch

import "archload/viz/panel"

// Height is how high a sketch stands, points.
const Height = 204.0

// Draw draws a sketch into a rectangle of the page, with its notes in their order; an unknown one is left out.
func Draw(l *panel.List, at panel.Rect, of string, notes []Note) {
	p := pen{List: l, at: at, notes: notes}
	switch of {
	case "rolling shear":
		p.fibres()
	case "neck":
		p.neck()
	case "lean":
		p.lean()
	}
}

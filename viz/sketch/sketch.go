package sketch

import "archload/viz/panel"

// Height is how high a sketch stands, points.
const Height = 204.0

// kinds are the sketches by their names.
func kinds() map[string]func(*pen) {
	return map[string]func(*pen){
		"rolling shear":   (*pen).fibres,
		"neck":            (*pen).neck,
		"lean":            (*pen).lean,
		"driven":          (*pen).driven,
		"swinging string": (*pen).swingingString,
		"air":             func(p *pen) { p.air(pumping(), rocking(), toneFills()) },
		"air over a post": func(p *pen) { p.air(overPost(0.4), rocking(), plainFills()) },
		"post":            (*pen).post,
		"hinge":           (*pen).hinge,
		"hinge and sides": (*pen).hingeAndSides,
		"tones":           (*pen).tones,
		"octave":          (*pen).octave,
		"shrunk":          (*pen).shrunk,
		"cloth":           (*pen).cloth,
		"faces":           (*pen).faces,
	}
}

// Draw draws a sketch into a rectangle of the page, with its notes in their order; an unknown one is left out.
func Draw(l *panel.List, at panel.Rect, of string, notes []Note) {
	if draw, ok := kinds()[of]; ok {
		draw(&pen{List: l, at: at, notes: notes})
	}
}

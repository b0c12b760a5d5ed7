package panel

import (
	"image/color"
	"slices"
)

// Vertex is a corner of a triangle on the page.
type Vertex struct {
	X, Y  float64     // pixels from the left and the top of the page
	U, V  float64     // place in the atlas, 0 to 1
	Paint color.NRGBA // multiplied by the atlas's coverage
}

// List is everything flat on the page: panels, text, legends, charts. Every
// three vertices are a triangle; later ones lie over earlier ones. Plain
// shapes use a place in the atlas that is full.
type List struct {
	Atlas    *Atlas
	Vertices []Vertex

	clips []pixels // what shows, innermost last

	watched bool // what is written is kept
	written []Written
}

// Same tells whether two lists draw the same; nil draws nothing.
func (l *List) Same(o *List) bool {
	if l == nil || o == nil {
		return l == o
	}
	return l.Atlas == o.Atlas && slices.Equal(l.Vertices, o.Vertices)
}

// pixels is a rectangle of whole pixels.
type pixels struct{ x0, y0, x1, y1 float64 }

package desk

import (
	"image"
	"image/color"

	"archload/viz/panel"
	"archload/viz/scene"
)

// Frame is one finished page: scenes in their rectangles, and the panels over
// them. A painter only reads it.
type Frame struct {
	Width, Height int         // pixels
	Density       float64     // pixels to a point of the layout: 1 on an ordinary screen, 2 on a fine one
	Paper         color.NRGBA // behind everything
	Views         []View
	Was           []View  // a picture that goes over into Views; nil: none
	Share         float64 // of Views over it, 0 to 1
	Panels        *panel.List
	Cursor        Cursor
}

// Cursor is how the pointer looks.
type Cursor uint8

// The cursors.
const (
	Arrow    Cursor = iota
	Pointing        // on something that can be taken
	Moving          // something is moved
)

// View is one scene in its rectangle of the page.
type View struct {
	Where    image.Rectangle // pixels
	Scene    *scene.Scene
	Camera   scene.Camera
	Contours bool    // lines at the steps of the legend
	Phase    float64 // of the beads on moving lines, 0 to 1
	Light    bool    // draw with less care while the hand moves (no multisampling)
	Pen      float64 // so many times as wide lines are drawn: less than once in a small drawing; 0: once
}

// LineDensity is how many pixels a point of a line's width has in a view.
func (f *Frame) LineDensity(v *View) float64 {
	d := max(f.Density, 0.1)
	if v.Pen > 0 {
		d *= v.Pen
	}
	return d
}

// paperColor is the ground of the drawing.
func paperColor() color.NRGBA { return color.NRGBA{250, 247, 240, 255} }

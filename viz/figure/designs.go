package figure

import (
	"image/color"

	"archload/viz/canvas"
)

// designPen tells designs apart by colour and by dashes.
func designPen(i int) canvas.Pen {
	colors := []color.NRGBA{canvas.Rust(), canvas.Blue(), {70, 110, 50, 255}, {120, 60, 120, 255}, {40, 40, 40, 255}, {150, 120, 20, 255}}
	dashes := [][]float64{nil, {6, 2.5}, {1.5, 2}, {8, 2, 1.5, 2}, {3, 2}, {10, 3}}
	return canvas.Pen{Width: 1.4, Color: colors[i%len(colors)], Dash: dashes[i%len(dashes)]}
}

func nameStyle() canvas.Style { return canvas.Style{Size: 8.5, Face: canvas.Bold, Color: canvas.Ink()} }

// heading is a quantity with its unit.
func heading(name, unit string) string {
	if unit == "" {
		return canvas.Clean(name)
	}
	return canvas.Clean(name + ", " + unit)
}

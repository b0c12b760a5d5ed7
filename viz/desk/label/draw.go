package label

import (
	"image/color"

	"archload/viz/panel"
	"archload/viz/scene"
)

// Draw writes the words on a ground of paper, and the lines that lead to what they name.
func Draw(l *panel.List, tags []Tag, paper color.NRGBA) {
	for _, t := range tags { // lines lie under words
		if t.led {
			light := paper
			light.A = 150
			l.Line(t.At, t.end(), 2.6, light)
			l.Line(t.At, t.end(), 1, panel.SoftInk())
			l.Disc(t.At, 1.8, panel.SoftInk())
		}
	}
	for _, t := range tags {
		ground, ink := paper, panel.Ink()
		ground.A = 205
		switch t.Kind {
		case scene.Orientation:
			ink = panel.SoftInk()
			ground.A = 0
		case scene.Level:
			ground.A = 110
		}
		if ground.A > 0 {
			l.Rect(t.Box, ground)
		}
		l.TextIn(t.Box, t.face, panel.Middle, ink, t.Text)
	}
}

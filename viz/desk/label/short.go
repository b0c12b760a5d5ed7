package label

import (
	"strings"

	"archload/viz/panel"
	"archload/viz/scene"
)

// Arrows are the shafts of a scene's arrows, by where a place of the scene, mm, is on the page.
func Arrows(s *scene.Scene, on func(p [3]float64) (x, y float64, ok bool)) (out [][2]panel.Point) {
	for _, l := range s.Lines {
		if l.Over && l.Halo && len(l.Points) == 2 {
			x0, y0, ok := on(l.Points[0])
			x1, y1, too := on(l.Points[1])
			if ok && too {
				out = append(out, [2]panel.Point{{X: x0, Y: y0}, {X: x1, Y: y1}})
			}
		}
	}
	return out
}

// Short is what a label can say in less room: its number alone, where that of its place tells the rest, and of a
// bar, which no arrow marks, its kind.
func Short(w scene.Label) string {
	if w.Kind != scene.SectorForce && w.Kind != scene.Force && w.Kind != scene.Part {
		return ""
	}
	for i := 1; i < len(w.Text); i++ {
		if w.Text[i-1] == ' ' && w.Text[i] >= '0' && w.Text[i] <= '9' {
			number, _, _ := strings.Cut(w.Text[i:], ", ")
			if strings.HasSuffix(w.Text[:i], " bar ") {
				return "bar " + number
			}
			return number
		}
	}
	return ""
}

package label

import (
	"strings"

	"archload/viz/scene"
)

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

package sheet

import (
	"fmt"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/shape"

	"archload/mesh"
	"archload/viz/canvas"
)

// mostWarnings is how many warnings a sheet prints; the rest is counted.
const mostWarnings = 6

// Lines of warnings on paper, mm.
const (
	warningLead  = 4
	warningWidth = 120 // at least
)

// warnings lists what deserves a second look before wood is cut by the sheets.
func warnings(c *cases.Case, g *shape.Geometry) []string {
	var out []string
	for _, w := range slices.Concat(g.Warnings, c.Warnings()) {
		out = append(out, w.Error())
	}
	return out
}

// warned adds a sheet's warnings below its drawing.
func (s *Sheet) warned() {
	if len(s.Warnings) == 0 {
		return
	}
	build, say := s.build, s.Warnings
	if n := len(say) - mostWarnings; n > 0 {
		say = append(slices.Clone(say[:mostWarnings]), fmt.Sprintf("and %d more; archload check prints them all", n))
	}
	s.build = func(fit fitter) *fullScale {
		d := build(fit)
		lines := []string{"Look at this before you cut:"}
		for _, w := range say {
			lines = append(lines, d.folded("- "+w, max(warningWidth, d.hi[0]-d.lo[0]))...)
		}
		height := warningLead * float64(len(lines))
		x, y := d.lo[0], fit(d.lo[1]-sheetGap-height, height)+height
		for i, l := range lines {
			style := canvas.Small()
			if i == 0 {
				style.Face = canvas.Bold
			}
			y -= warningLead
			d.words(mesh.Point{x, y}, l, style, 0)
		}
		return d
	}
}

// folded breaks a text into lines of at most width mm.
func (d *fullScale) folded(text string, width float64) []string {
	var out []string
	line := ""
	for _, w := range strings.Fields(text) {
		if line != "" && d.wide(line+" "+w, canvas.Small()) > width {
			out, line = append(out, line), ""
		}
		line = strings.TrimPrefix(line+" "+w, " ")
	}
	return append(out, line)
}

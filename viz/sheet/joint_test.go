package sheet

import (
	"math"
	"testing"
)

// TestNoJointThroughATemplate wants every template that fits between two joints
// to lie between them, on every paper, whatever is printed below.
func TestNoJointThroughATemplate(t *testing.T) {
	for _, name := range []string{"course-guitar-relief", "octave-mandola"} {
		for _, paper := range []Paper{A4, Letter} {
			for _, sh := range sheetsOf(t, name, Options{Paper: paper}) {
				if sh.Name != "cross-arches" && sh.Name != "long-arches" && sh.Name != "inside-arches" {
					continue
				}
				tl, _ := sh.tile()
				if len(tl.cells) == 1 {
					continue
				}
				for _, it := range tl.d.items {
					if !it.closed || it.pen.Width != 0.9 || it.hi[1]-it.lo[1] > tl.cell[1] {
						continue
					}
					k := math.Floor((it.lo[1] - sheetLap) / tl.cell[1])
					if low, high := sheetLap+k*tl.cell[1], sheetLap+(k+1)*tl.cell[1]; it.lo[1] < sheetLap || it.lo[1] < low || it.hi[1] > high {
						t.Errorf("%s on %s, %s: a template from %.1f to %.1f mm, joints at %.1f and %.1f", name, paper, sh.Name, it.lo[1], it.hi[1], low, high)
					}
				}
			}
		}
	}
}

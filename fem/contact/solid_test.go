package contact

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"archload/fem/element"
	"archload/fem/sparse"
)

// solidContact is the part of the 3D solid reference about the relieved foot.
type solidContact struct {
	Touch struct {
		Value float64 `json:"value"`
	} `json:"P_touch_per_mm_gap"`
	Compliance [][]float64 `json:"compliance_mm_per_N"`
}

type solidFoot struct {
	Force  []float64            `json:"force"`
	Thirds map[string][]float64 `json:"thirds"`
}

func readSolid(t *testing.T, rim string) (solidContact, map[float64]solidFoot) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/solid3d/values.json")
	if err != nil {
		t.Fatal(err)
	}
	var all map[string]json.RawMessage
	var part map[string]json.RawMessage
	var raw map[string]json.RawMessage
	var c solidContact
	for _, e := range []error{
		json.Unmarshal(data, &all), json.Unmarshal(all[rim], &part),
		json.Unmarshal(part["B"], &raw), json.Unmarshal(part["B"], &c),
	} {
		if e != nil {
			t.Fatal(e)
		}
	}
	feet := map[float64]solidFoot{}
	for _, g := range []float64{0, 0.05, 0.1, 0.2} {
		var f solidFoot
		if err := json.Unmarshal(raw[fmt.Sprintf("g0=%g", g)], &f); err != nil {
			t.Fatal(err)
		}
		feet[g] = f
	}
	return c, feet
}

// referenceBeam is the reference's foot beam: 120 long, 13 wide, 12 high,
// straight, with six equal loads; guided where the plane problem has no motion.
func referenceBeam() (*Body, []float64) {
	var patches []float64
	for i := range 15 {
		patches = append(patches, -56+8*float64(i))
	}
	loads := []float64{-26, -15.6, -5.2, 5.2, 15.6, 26}
	xs := append(append([]float64{-60, 60}, patches...), loads...)
	slices.Sort(xs)
	xs = slices.Compact(xs)
	b := &Body{}
	at := map[float64]int32{}
	for i, x := range xs {
		at[x] = int32(i)
		b.Nodes = append(b.Nodes, [3]float64{x, 20, 0})
		if i > 0 {
			b.Beams = append(b.Beams, BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1},
				Section: element.Rectangle{Width: 13, Height: 12, E: 17000, Gxy: 1200, Gxz: 1200}})
		}
	}
	for _, x := range loads {
		b.Loads = append(b.Loads, BodyLoad{Node: at[x], At: [3]float64{x, 20, 0}, F: [3]float64{0, 0, -160.0 / 6}})
	}
	mid := at[0]
	for _, g := range []Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}},
		{Dir: [3]float64{0, 0, 1}, Turn: true}, {Dir: [3]float64{1, 0, 0}, Turn: true}} {
		g.Node, g.At = mid, b.Nodes[mid]
		b.Guides = append(b.Guides, g)
	}
	return b, patches
}

// referenceStanding stands the beam on a plate given by its compliance matrix
// alone.
func referenceStanding(t *testing.T, c [][]float64) (*Problem, []float64) {
	t.Helper()
	body, patches := referenceBeam()
	cond := &Condensed{hold: Slip, idle: factors()}
	for i, x := range patches {
		node := int32(slices.IndexFunc(body.Nodes, func(p [3]float64) bool { return p[0] == x }))
		cond.pads = append(cond.pads, Pad{Node: node, At: [3]float64{x, 20, 0},
			Dir: [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}})
		cond.c = append(cond.c, c[i]...)
	}
	cond.cols = make([]sparse.Column, len(patches))
	cond.loadAt = make([]float64, len(patches))
	s, err := cond.Problem(body)
	if err != nil {
		t.Fatal(err)
	}
	return s, patches
}

func gaps(g0 float64, patches []float64) []float64 {
	g := make([]float64, len(patches))
	for i, x := range patches {
		g[i] = g0 * (1 - (x/60)*(x/60))
	}
	return g
}

// TestContactSolid solves the reference's own contact problem on the
// reference's own compliance matrix: forces within the reference's printed
// error, thirds, and the load at which the centre first touches.
// Source: 3D solid reference, see testdata/README.md.
func TestContactSolid(t *testing.T) {
	for _, rim := range []string{"clamped", "hinged"} {
		ref, feet := readSolid(t, rim)
		s, patches := referenceStanding(t, ref.Compliance)
		for g0, foot := range feet {
			st, err := s.Follow(LoadCase{Gap: gaps(g0, patches)})
			if err != nil {
				t.Fatalf("%s g0 %g: %v", rim, g0, err)
			}
			for i, want := range foot.Force {
				if got := st.Lambda[i]; math.Abs(got-want) > 0.02 {
					t.Errorf("%s, gap %g mm, patch at %g: force %.4f N, want %.4f N", rim, g0, patches[i], got, want)
				}
			}
			if st.Residual > 1e-9 {
				t.Errorf("%s, gap %g mm: contact residual %.2g, want < 1e-9", rim, g0, st.Residual)
			}
			if g0 == 0 {
				continue
			}
			touch := math.NaN()
			for _, e := range st.Events {
				if e.Pad == 7 && e.Closes {
					touch = e.Load * 160 / g0
				}
			}
			if math.Abs(touch-ref.Touch.Value) > 0.002*ref.Touch.Value {
				t.Errorf("%s, gap %g mm: centre touches at %.3f N per mm, want %.3f", rim, g0, touch, ref.Touch.Value)
			}
		}
	}
}

package answer

import (
	"math"
	"testing"

	"archload/cases/design"
)

// TestBridgeMoves wants the drawn bridge to move as the report says.
func TestBridgeMoves(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"course-guitar", "course-guitar-treble-relief", "course-guitar-posts"} {
		s := solved(t, name, 0.5)
		at := s.Top.Built.Case.Bridge.At
		mid := design.BridgePoint{At: [3]float64{at[0], at[1], s.Top.Built.Bridge.Body.Nodes[s.Top.Built.Bridge.Mid][2]}, Node: s.Top.Built.Bridge.Mid}
		got, rest := -s.BridgeMove(mid)[2], -s.Result.State.SlackRest[2]+s.Result.State.SlackRest[4]*(at[0]-s.Top.Built.Bridge.Body.Nodes[0][0])
		if want := -s.Result.Body[6*s.Top.Built.Bridge.Mid+2]; math.Abs(got-rest-want) > 1e-12 {
			t.Errorf("%s: the bridge comes down by %g mm from its rest, want %g", name, got-rest, want)
		}
		for i, st := range s.Top.Built.StringShapes() {
			if math.Abs(st.Saddle.At[0]-at[0]-s.Top.Built.Geometry.StringForces()[i].X) > 1e-12 || !(st.Neck[1] > 0.9) || !(st.Tail[1] < -0.9) || st.Neck[2] > 0 || st.Tail[2] > 0 {
				t.Errorf("%s: string %s over %v, to %v and %v", name, st.Name, st.Saddle.At, st.Neck, st.Tail)
			}
		}
		if g := s.FootGaps(); len(g) != len(FootCells(s)) {
			t.Errorf("%s: %d gaps for %d cells", name, len(g), len(FootCells(s)))
		}
	}
}

// TestBridgeParts wants every part's sections to be whole, and its outer size
// to be the case's.
func TestBridgeParts(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		parts []string
	}{{"course-guitar", []string{"base", "saddle"}}, {"course-guitar-posts", []string{"base", "post", "post", "saddle beam"}}, {"bench-plate", nil}} {
		s := solved(t, c.name, 0.5)
		parts := s.Top.Built.BridgeParts()
		if len(parts) != len(c.parts) {
			t.Fatalf("%s: %d parts, want %v", c.name, len(parts), c.parts)
		}
		for i, p := range parts {
			if p.Name != c.parts[i] {
				t.Errorf("%s: part %d is a %q, want %q", c.name, i, p.Name, c.parts[i])
			}
			for _, sec := range p.Sections {
				if len(sec) != len(p.Sections[0]) {
					t.Errorf("%s, %s: sections of %d and %d corners", c.name, p.Name, len(sec), len(p.Sections[0]))
				}
			}
		}
		if parts == nil {
			continue
		}
		first, last := parts[0].Sections[0][0].At, parts[0].Sections[len(parts[0].Sections)-1][5].At
		br := s.Top.Built.Case.Bridge
		if math.Abs(last[0]-first[0]-float64(br.Length)) > 1e-9 || math.Abs(last[1]-first[1]-float64(br.Width)) > 1e-9 {
			t.Errorf("%s: base from %v to %v, want %g by %g mm", c.name, first, last, float64(br.Length), float64(br.Width))
		}
	}
}

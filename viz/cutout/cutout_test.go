package cutout

import (
	"math"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
	"archload/fem/vec3"
	"archload/viz/scene"
)

// slab is a closed box 100 wide, 60 long, 4 thick in two skins, its values x.
func slab() *scene.Scene {
	skin := func(name string, z, up float64) *scene.Solid {
		o := &scene.Solid{Name: name}
		for _, p := range []vec{{-50, -30, z}, {50, -30, z}, {50, 30, z}, {-50, 30, z}} {
			o.Points, o.Normals, o.Values = append(o.Points, p), append(o.Normals, vec{0, 0, up}), append(o.Values, p[0])
			o.Dim, o.Across = append(o.Dim, p[1]), append(o.Across, 2*p[0])
		}
		o.Tris = [][3]int32{{0, 1, 2}, {0, 2, 3}}
		if up < 0 {
			o.Tris = [][3]int32{{0, 2, 1}, {0, 3, 2}}
		}
		return o
	}
	return &scene.Scene{Solids: []*scene.Solid{skin("plate outside", 2, 1), skin("plate inside", -2, -1)},
		Lines:  []*scene.Line{{Points: []vec{{-50, 0, 2}, {50, 0, 2}}}, {Points: []vec{{-45, 0, 2}, {-40, 10, 2}}}},
		Labels: []scene.Label{{Text: "in", At: vec{5, 0, 2}, Kind: scene.Part}, {Text: "out", At: vec{30, 0, 2}, Kind: scene.Part}}}
}

// area of a solid's triangles, mm², and the part of it whose normal, by the order of corners, points as the points' do.
func area(o *scene.Solid) (all, right float64) {
	for _, t := range o.Tris {
		n := vec3.Cross(vec3.Sub(o.Points[t[1]], o.Points[t[0]]), vec3.Sub(o.Points[t[2]], o.Points[t[0]]))
		all += vec3.Norm(n) / 2
		if vec3.Dot(n, o.Normals[t[0]]) > 0 {
			right += vec3.Norm(n) / 2
		}
	}
	return all, right
}

func TestStrip(t *testing.T) {
	s := Strip(slab(), 3, 10, 40, -20, 0.5)
	want := map[string]float64{"plate outside": 20 * 60, "plate inside": 20 * 60, "cut": 2 * 4 * 60}
	got := map[string]float64{}
	for _, o := range s.Solids {
		all, right := area(o)
		got[o.Name] += all
		if math.Abs(all-right) > 1e-9 {
			t.Errorf("%s: %g of %g mm² face the wrong way", o.Name, all-right, all)
		}
		for i, p := range o.Points {
			if p[0] < -7-1e-9 || p[0] > 13+1e-9 || o.Values != nil && math.Abs(o.Values[i]-p[0]) > 1e-9 {
				t.Errorf("%s: a point at %v with the value %v", o.Name, p, o.Values)
			}
			if o.Across != nil && (len(o.Across) != len(o.Points) || math.Abs(o.Across[i]-2*p[0]) > 1e-9 || len(o.Dim) != len(o.Points) || math.Abs(o.Dim[i]-p[1]) > 1e-9) {
				t.Fatalf("%s: a point at %v of %d with %v across the grain and %v of light", o.Name, p, len(o.Points), o.Across, o.Dim)
			}
		}
	}
	for name, a := range want {
		if math.Abs(got[name]-a) > 1e-6 {
			t.Errorf("%s has %g mm², want %g", name, got[name], a)
		}
	}
	if l := s.Lines[0].Points; len(l) != 2 || math.Abs(l[0][0]+7) > 1e-9 || math.Abs(l[1][0]-13) > 1e-9 {
		t.Errorf("a line across is cut to %v, want x from -7 to 13", l)
	}
	texts := map[string]vec{}
	for _, l := range s.Labels {
		texts[l.Text] = l.At
	}
	if _, ok := texts["out"]; ok || len(texts) != 3 {
		t.Errorf("words %v, want that of the strip and two of the arrows", texts)
	}
	if at, ok := texts["pushes with 40 N"]; !ok || at[1] > -30 {
		t.Errorf("the push stands at %v, want beyond the tail's end", at)
	}
	if at, ok := texts["pulls with 20 N"]; !ok || at[1] < 30 {
		t.Errorf("the pull stands at %v, want beyond the neck's end", at)
	}
	tips := map[float64]bool{}
	for _, l := range s.Lines {
		if l.Over && len(l.Points) == 2 {
			tips[math.Round(l.Points[1][1])] = true
		}
	}
	if !tips[-53] || !tips[23] || len(tips) != 2 {
		t.Errorf("arrows end at y of %v, want 20 mm outward of -33 and 10 mm inward of 33", tips)
	}
}

// The lesson's words: a strip of the arch pushes its ends outward, that of the flat plate
// pulls them inward, and less. Both are what the held edge gives back.
func TestPush(t *testing.T) {
	push := map[string][2]float64{}
	for _, name := range []string{"course-guitar", "flat-plate"} {
		s, err := design.Solve(t.Context(), casetest.Open(t, name), design.Options{Workers: 2, Refine: 0.3, NoError: true, NoFlow: true})
		if err != nil {
			t.Fatal(err)
		}
		tail, neck := Push(s, 0, 25)
		push[name] = [2]float64{tail, neck}
		heldTail, heldNeck := 0.0, 0.0 // by the reactions of the held edge
		for _, r := range s.Result.Reactions {
			switch {
			case math.Abs(r.At[0]) > 25:
			case r.At[1] < 0:
				heldTail += r.F[1]
			default:
				heldNeck -= r.F[1]
			}
		}
		if math.Abs(tail-heldTail) > 1e-6*math.Abs(heldTail) || math.Abs(neck-heldNeck) > 1e-6*math.Abs(heldNeck) {
			t.Errorf("%s pushes with %g and %g N, the edge holds %g and %g", name, tail, neck, heldTail, heldNeck)
		}
	}
	arch, flat := push["course-guitar"], push["flat-plate"]
	if !(arch[0] > 100 && arch[1] > 100 && flat[0] < 0 && flat[1] < 0 && flat[0] > -arch[0]/2 && flat[1] > -0.7*arch[1]) {
		t.Errorf("the arch pushes with %v N, the flat plate with %v; want the arch outward, the flat one inward and less", arch, flat)
	}
}

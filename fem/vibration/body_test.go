package vibration

import (
	"math"
	"testing"

	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/fem/sparse"
)

// A stiff heavy body on a plate so heavy and stiff that it stays: its tones are those of a rigid
// bar on springs. Pads stand at x = +-c with the bedding 1/k each: it pumps with sqrt(2k/m) and
// rocks with sqrt(2 k c² / J); stays hold it sideways. A mass on its middle only weighs.
func TestBodyOnPads(t *testing.T) {
	bodyOnPads(t, 0)
	bodyOnPads(t, 20e-6)
}

func bodyOnPads(t *testing.T, more float64) {
	w := spruce()
	w.EL, w.ER, w.ET, w.GLR, w.GLT, w.GRT, w.Density = 1e9, 1e9, 1e9, 4e8, 4e8, 4e8, 10000
	w.NuLR, w.NuLT, w.NuRT = 0.3, 0.3, 0.3
	sys := plate(t, 8, 200, 200, 20, w, 3)
	const k, side, mass, half, c = 2000.0, 300.0, 30e-6, 50.0, 40.0
	sec := element.Rectangle{Width: 10, Height: 10, E: 1e8, Gxy: 4e7, Gxz: 4e7}
	body := &contact.Body{}
	for i := range 11 {
		body.Nodes = append(body.Nodes, [3]float64{100 - half + 10*float64(i), 100, 15})
		if i > 0 {
			body.Beams = append(body.Beams, contact.BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1}, Section: sec, Mass: mass / 10})
		}
	}
	body.Masses = []contact.BodyMass{{Node: 5, At: body.Nodes[5], Mass: more}}
	in := Input{Plate: sys, Body: body, Workers: 1}
	frame := [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}
	for _, i := range []int32{1, 9} {
		at := body.Nodes[i]
		on := fem.SurfacePoint{Shell: 0, L: [3]float64{1, 0, 0}, Zeta: 1} // anywhere: it does not move
		in.Pads = append(in.Pads, Pad{Rows: 1, Pad: contact.Pad{Node: i, At: at, Dir: frame, Spread: []fem.SurfacePoint{on}, Bedding: [2]float64{1 / k, 1}}})
	}
	for _, i := range []int32{0, 10} { // sideways at the ends, about x by a high stay
		at := body.Nodes[i]
		in.Stays = append(in.Stays, Stay{Node: i, At: at, Stiffness: [3][3]float64{{side, 0, 0}, {0, side, 0}, {0, 0, 0}}})
		at[2] += 10
		in.Stays = append(in.Stays, Stay{Node: i, At: at, Stiffness: [3][3]float64{{0, 0, 0}, {0, side, 0}, {0, 0, 0}}})
	}
	s, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	tones, err := s.Tones(6, 0)
	if err != nil {
		t.Fatal(err)
	}
	jy := mass * (4*half*half + 100) / 12
	for _, want := range []float64{math.Sqrt(2 * k / (mass + more)), math.Sqrt(2 * k * c * c / jy), math.Sqrt(2 * side / (mass + more))} {
		hz, found := want/(2*math.Pi), false
		for _, tone := range tones.List {
			found = found || math.Abs(tone.Hz-hz) < 1e-3*hz
		}
		if !found {
			t.Errorf("no tone at %.2f Hz", hz)
		}
	}
	for _, tone := range tones.List[:6] {
		if b := s.Shares([][]float64{tone.Shape})[0].Body; b < 0.99 {
			t.Errorf("%.1f Hz: the body has %.3f of the movement, want all", tone.Hz, b)
		}
	}
	// A force on the body at rest moves it by the stays' and pads' compliance.
	r, err := tones.Reduce([]sparse.Column{s.BodyPort(5, body.Nodes[5], [3]float64{0, 0, 1})}, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	const low = 0.1
	got := imag(r.Mobility(0, 0, low)) / (2 * math.Pi * low)
	if want := 1 / (2 * k); math.Abs(got-want) > 1e-3*want {
		t.Errorf("slow movement %.6g mm/N, want %.6g", got, want)
	}
}

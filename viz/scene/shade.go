package scene

import (
	"image/color"
	"math"

	"archload/mesh"
)

// How much of the sky a place of the plate still sees: common sense of what lies in a
// hollow or beside a block, no calculation of light.
const (
	hollowSteps = 14   // means over the neighbours, by which a hollow is felt
	hollowFull  = 1.1  // mm below those means at which a hollow is darkest
	hollowDark  = 0.22 // of the light that it then lacks
	blockReach  = 9.0  // mm from a block at which two thirds of its shade are gone
	blockDark   = 0.42 // of the light that lacks beside it
	endDark     = 0.24 // of the light that end grain swallows
	shadeHover  = 1.2  // mm that a string's shadow lies above the plate, so that its width stays clear of it
	hollowShown = 0.35 // share of a hollow's shade where colours mean something
)

// hollows is how far each node of the outer surface lies below the mean of what is about
// it, mm; 0 for a rise. The outline counts as it is.
func hollows(m *mesh.Mesh) []float64 {
	z := make([]float64, len(m.Nodes))
	for i, n := range m.Nodes {
		z[i] = n.P[2] + n.H/2*n.N[2]
	}
	held := make([]bool, len(z))
	for _, loop := range append([][]int32{m.Rim}, m.Holes...) {
		for _, n := range loop {
			held[n] = true
		}
	}
	now, sum, count := append([]float64(nil), z...), make([]float64, len(z)), make([]float64, len(z))
	for range hollowSteps {
		clear(sum)
		clear(count)
		for _, t := range m.Tris {
			mean := (now[t[0]] + now[t[1]] + now[t[2]]) / 3
			for _, n := range t {
				sum[n] += mean
				count[n]++
			}
		}
		for i := range now {
			if !held[i] && count[i] > 0 {
				now[i] = sum[i] / count[i]
			}
		}
	}
	for i := range z {
		z[i] = math.Max(0, now[i]-z[i])
	}
	return z
}

// dims are the factors of light at the nodes of the outer surface: in a hollow and about
// the bridge.
func (b *build) dims() []float64 {
	out := make([]float64, len(b.k.hollow))
	dark := hollowDark
	if b.in.Field != Wood {
		dark *= hollowShown
	}
	br := b.s.Top.Built.Case.Bridge
	if b.in.Field.OnFoot() { // which is shown without it
		br = nil
	}
	for i, h := range b.k.hollow {
		out[i] = 1 - dark*math.Min(1, h/hollowFull)
		if br == nil {
			continue
		}
		p := b.k.mesh.Points[i]
		dx := math.Max(0, math.Abs(p[0]-br.At[0])-float64(br.Length)/2)
		dy := math.Max(0, math.Abs(p[1]-br.At[1])-float64(br.Width)/2)
		d := math.Hypot(dx, dy) / blockReach
		out[i] *= 1 - blockDark*math.Exp(-d*d)
	}
	return out
}

// endGrain darkens a cut edge where it cuts across the grain: of each place of the edge,
// above and below.
func (b *build) endGrain(normals []vec) []float64 {
	sin, cos := math.Sincos(float64(b.s.Top.Built.Case.Plate.GrainAngle) * math.Pi / 180)
	out := make([]float64, len(normals))
	for i, n := range normals {
		along := -sin*n[0] + cos*n[1]
		out[i] = 1 - endDark*along*along
	}
	return out
}

// stringShades lays the strings' soft shadows on the plate, straight below them.
func (b *build) stringShades(way []vec) {
	const step = 7.0 // mm
	var run []vec
	flush := func() {
		for _, w := range [2]float64{5, 2.2} {
			if len(run) > 1 {
				b.line(&Line{Points: run, Width: w, Paint: color.NRGBA{60, 44, 30, 26}})
			}
		}
		run = nil
	}
	from, to := way[0], way[len(way)-1]
	n := int(math.Abs(to[1]-from[1])/step) + 1
	for i := range n + 1 {
		u := float64(i) / float64(n)
		at, inside := b.s.Top.Built.OnOuter(mesh.Point{from[0] + u*(to[0]-from[0]) + 3, from[1] + u*(to[1]-from[1])})
		if !inside {
			flush()
			continue
		}
		sp := b.k.spot(at)
		run = append(run, plus(sp.on(b.outer), shadeHover, sp.on(b.up)))
	}
	flush()
}

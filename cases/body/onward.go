package body

import (
	"math"

	"archload/cases/design"
	"archload/fem"
	"archload/mesh"
)

// Onward is where the vertical load goes on from the top: to the two blocks, on which the strings pull
// upward, straight or by way of sides and back. All are forces handed on downward, N; a part that lifts
// is negative. What a part takes it gives:
//
//	Load        = what the top gives to both sides, both blocks and the posts
//	a side      : FromTop = ToNeck + ToTail + ToBack
//	the back    : ToBack of both sides + Posts = FromBack of both blocks
//
// exactly, as finite elements balance at their nodes.
type Onward struct {
	Load   float64   `json:"load"` // on the top
	Bass   SideFlow  `json:"bass_side"`
	Treble SideFlow  `json:"treble_side"`
	Posts  float64   `json:"posts"` // from the top to the back
	Neck   BlockFlow `json:"neck"`
	Tail   BlockFlow `json:"tail"`
}

// SideFlow is what one side with its linings takes and gives between the blocks, N.
type SideFlow struct {
	FromTop float64 `json:"from_top"`
	ToNeck  float64 `json:"to_neck"`
	ToTail  float64 `json:"to_tail"`
	ToBack  float64 `json:"to_back"`

	Stations []SideStation `json:"stations"` // from the neck block to the tail block
}

// SideStation is a stretch of a side. What it takes from the top and does not give to the back it carries along:
//
//	Carried of this one = Carried of the one before + (Top − Back) (To − From),
//
// from -ToNeck at the neck block to ToTail at the tail block.
type SideStation struct {
	From    float64 `json:"from"` // mm along the outline from the neck block's end
	To      float64 `json:"to"`
	X       float64 `json:"x"` // mm, its middle
	Y       float64 `json:"y"`
	Top     float64 `json:"top"`     // N/mm, from the top
	Back    float64 `json:"back"`    // N/mm, to the back
	Carried float64 `json:"carried"` // N toward the tail, through a cut of the side's whole height at To
}

// BlockFlow is what arrives at a block, by its ways, N.
type BlockFlow struct {
	FromTop    float64  `json:"from_top"` // straight
	FromBass   float64  `json:"from_bass_side"`
	FromTreble float64  `json:"from_treble_side"`
	FromBack   float64  `json:"from_back"`
	Total      float64  `json:"total"`
	Share      *float64 `json:"share"` // 1, of the load; null without one
}

// onward reads a body off the forces between its elements and their nodes; nil where movements are not
// small, since these forces are those of the unmoved body.
func onward(s *design.Solution) *Onward {
	if s.Result.Large {
		return nil
	}
	w := newWalls(s)
	w.collect()
	f := w.flow
	for n := range s.Top.Built.PlateN {
		f.Load -= s.Result.Load[6*n+2]
	}
	for _, p := range w.posts() {
		f.Posts += p
	}
	bass, treble := newArc(s.Top.Built, 0), newArc(s.Top.Built, 1)
	w.cells = int(math.Ceil(max(bass.long, treble.long) / stationStep))
	f.Bass.Stations, f.Treble.Stations = w.stations(&f.Bass, bass), w.stations(&f.Treble, treble)
	for _, b := range []*BlockFlow{&f.Neck, &f.Tail} {
		b.Total = b.FromTop + b.FromBass + b.FromTreble + b.FromBack
		if f.Load > 0 {
			share := b.Total / f.Load
			b.Share = &share
		}
	}
	return f
}

// walls gathers what the sides take and give, node by node.
type walls struct {
	s     *design.Solution
	flow  *Onward
	block map[int32]*BlockFlow // of nodes that a block holds
	rim   map[int32]bool       // of nodes of a plate's edge that none holds: whether it is the top's
	cells int                  // stations of a side
	gives map[int32]float64    // N, what these take from the side downward; the top's give, so that theirs is negative
}

func newWalls(s *design.Solution) *walls {
	b := s.Top.Built
	w := &walls{s: s, flow: &Onward{}, block: map[int32]*BlockFlow{}, rim: map[int32]bool{}, gives: map[int32]float64{}}
	for i, f := range []*BlockFlow{&w.flow.Neck, &w.flow.Tail} {
		for _, n := range b.Model.Bodies[i].Nodes {
			w.block[n] = f
		}
	}
	for _, n := range b.Mesh.Rim {
		if w.block[n] == nil {
			w.rim[n] = true
		}
	}
	for _, n := range b.Back.Mesh.Rim {
		if n += b.Back.First; w.block[n] == nil {
			w.rim[n] = false
		}
	}
	return w
}

// collect sums the forces by which nodes pull at elements: of sides and linings at both edges and at the
// blocks, of top and back at the blocks. An element is pressed down by as much as it is pulled up.
func (w *walls) collect() {
	r := w.s.Result
	for n, f := range w.block {
		if int(n) < w.s.Top.Built.PlateN {
			f.FromTop -= r.Load[6*n+2] // loads that stand on the top over a block
		}
	}
	for i, e := range r.Plate.Elements {
		nodes, side := fem.OwnNodes(e), e.Part() == design.PartRim
		if !w.touches(nodes, side) {
			continue
		}
		pull := r.PullOwn(i)
		for k, n := range nodes {
			v := pull[6*k+2]
			if f := w.block[n]; f != nil {
				*w.way(f, e.Part(), n) += v
				if side {
					*w.end(f, n) += v
				}
			} else if _, edge := w.rim[n]; edge && side {
				w.gives[n] += v
			}
		}
	}
}

// touches says whether an element has a node whose force is asked for.
func (w *walls) touches(nodes []int32, side bool) bool {
	for _, n := range nodes {
		if w.block[n] != nil {
			return true
		}
		if _, edge := w.rim[n]; edge && side {
			return true
		}
	}
	return false
}

// sideOf is the side on which a node lies.
func (w *walls) sideOf(n int32) *SideFlow {
	if w.s.Top.Built.Model.Nodes[n].P[0] < 0 {
		return &w.flow.Bass
	}
	return &w.flow.Treble
}

// way is by which way a part brings its force to a block.
func (w *walls) way(f *BlockFlow, part fem.Part, n int32) *float64 {
	switch {
	case part == design.PartBack:
		return &f.FromBack
	case part != design.PartRim:
		return &f.FromTop
	case w.sideOf(n) == &w.flow.Bass:
		return &f.FromBass
	}
	return &f.FromTreble
}

// end is what a side gives to a block.
func (w *walls) end(f *BlockFlow, n int32) *float64 {
	if f == &w.flow.Neck {
		return &w.sideOf(n).ToNeck
	}
	return &w.sideOf(n).ToTail
}

// posts are the forces of the posts between top and back, N.
func (w *walls) posts() []float64 {
	b := w.s.Top.Built
	var out []float64
	for i := b.FirstPost; i < len(b.Model.Springs); i++ {
		out = append(out, w.s.Result.SpringForce(i)[2])
	}
	return out
}

// stationStep is how long a station is at most, mm: what nodes take is a mean over several of them.
const stationStep = 20

// stations spreads what a side's nodes take and give evenly over the stretch of outline that belongs to each,
// and sums it over stretches of equal length.
func (w *walls) stations(f *SideFlow, a arc) []SideStation {
	top, back := a.spread(w.spots(f, a, true), w.cells), a.spread(w.spots(f, a, false), w.cells)
	out := make([]SideStation, len(top))
	carried, step := -f.ToNeck, a.long/float64(len(top))
	for i := range out {
		f.FromTop, f.ToBack = f.FromTop-top[i], f.ToBack+back[i]
		carried += -top[i] - back[i]
		at := a.at((float64(i) + 0.5) * step)
		out[i] = SideStation{From: float64(i) * step, To: float64(i+1) * step, X: at[0], Y: at[1],
			Top: -top[i] / step, Back: back[i] / step, Carried: carried}
	}
	return out
}

// spots are what the nodes of one edge of a side give, the top's or the back's.
func (w *walls) spots(f *SideFlow, a arc, top bool) []spot {
	var out []spot
	for n, onTop := range w.rim {
		if onTop == top && w.sideOf(n) == f {
			p := w.s.Top.Built.Model.Nodes[n].P
			out = append(out, spot{a.along(mesh.Point{p[0], p[1]}), w.gives[n]})
		}
	}
	return out
}

package fit

import (
	"context"
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/bench"
	"archload/cases/design"
	"archload/cases/motion"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/mesh/plane"
)

// more is how many tones are looked at beyond those that were heard: some may not have been.
const more = 5

// plan lists the setups of a file and the readings in them.
func plan(ctx context.Context, f *bench.File) (*planner, error) {
	p := &planner{f: f, ctx: ctx}
	if err := p.blank(); err != nil {
		return nil, err
	}
	for i := range f.Bars {
		p.bar(i)
	}
	if err := p.presses(); err != nil {
		return nil, err
	}
	return p, nil
}

// planner gathers setups and readings.
type planner struct {
	f        *bench.File
	ctx      context.Context
	setups   []*setup
	readings []reading
	asked    []reading // gauges that are to be told
}

// blank takes the blank's weight and tones.
func (p *planner) blank() error {
	b := p.f.Blank
	if b == nil {
		return nil
	}
	place := len(woodKeys())
	states := map[string]*setup{}
	for i := range p.f.Tones {
		t := &p.f.Tones[i]
		s := states[t.State]
		if s == nil {
			thin, deep, err := p.blankMaker(t.State, nil)
			if err != nil {
				return err
			}
			s = &setup{name: "blank", make: thin, deep: deep, thickness: place, count: more}
			if t.State == "bare" {
				s.name = "plate on its edge"
			}
			if b.Shape == "bar" {
				s.strip = &flatPiece{width: float64(b.Width), thickness: b.Thickness, axes: axesOf(p.f, false, false)}
			}
			states[t.State] = s
			p.setups = append(p.setups, s)
		}
		s.count++
		r := reading{kind: tone, setup: s, value: float64(t.Hz), sd: shareOr(float64(t.Noise)/float64(t.Hz), 0.005), key: tree.EntryKey("tone", i+1), words: fmt.Sprintf("tone of %g Hz", float64(t.Hz)), unit: "Hz"}
		if q, ok := motion.ReadPattern(t.Pattern); ok {
			r.pattern = &q
			r.words += ", " + t.Pattern
		}
		p.readings = append(p.readings, r)
	}
	if b.Weight == 0 {
		return nil
	}
	s, err := p.anyBlank(states)
	if err != nil {
		return err
	}
	p.readings = append(p.readings, reading{kind: weight, setup: s, value: float64(b.Weight), sd: shareOr(float64(b.WeightNoise)/float64(b.Weight), 0.005),
		key: "blank.weight", words: "weight of the blank", unit: "g"})
	return nil
}

// anyBlank is the setup of the free blank, one that is only weighed if it was not tapped.
func (p *planner) anyBlank(states map[string]*setup) (*setup, error) {
	if s := states["free"]; s != nil {
		return s, nil
	}
	scene, _, err := p.blankMaker("free", nil)
	s := &setup{name: "blank", make: scene, thickness: len(woodKeys())}
	p.setups = append(p.setups, s)
	return s, err
}

// blankMaker makes the blank's scene in a state, or as it was pressed.
// deep is nil but for one that is taken for thin.
func (p *planner) blankMaker(state string, pr *bench.Press) (shallow, deep maker, err error) {
	f, b := p.f, p.f.Blank
	if b.Shape == "plate" {
		return topMaker(f.Top, state, pr), nil, nil
	}
	flat := flatPiece{length: float64(b.Length), width: float64(b.Width), thickness: b.Thickness, axes: axesOf(f, false, false)}
	if b.Outline != nil {
		c, err := plane.NewCurve(b.Outline.Points, b.Corners())
		if err != nil {
			at := f.Rep.Find("blank.outline")
			return nil, nil, &tree.FileError{File: at.Src.Label, Line: at.Line, Key: "blank.outline", Err: err}
		}
		flat.outline = c
	}
	flat.flat, flat.fine = f.Cut == "flat", flat.outline == nil
	flat.lies(pr)
	if !thinBlank(f) {
		return flat.make, nil, nil
	}
	thin := flat
	thin.thin, thin.fine = true, false
	return thin.make, flat.make, nil
}

// lies puts a flat piece on what it was pressed on.
func (f *flatPiece) lies(p *bench.Press) {
	if p == nil {
		return
	}
	if p.Span > 0 {
		f.lines = []float64{-float64(p.Span) / 2, float64(p.Span) / 2}
	}
	f.points = p.Supports
}

// topMaker makes the scene of a case's plate.
func topMaker(c *cases.Case, state string, pr *bench.Press) maker {
	alone := *c
	alone.Strings, alone.Bridge, alone.Loads = nil, nil, nil
	free := 0
	if state == "free" || pr != nil && len(pr.Supports) > 0 {
		alone.Rim.Support, alone.Rim.Squeeze, alone.Supports, alone.Posts = "free", 0, nil, nil
		free = 6
	}
	if pr != nil {
		for i := range pr.Supports {
			alone.Supports = append(alone.Supports, cases.Support{At: &pr.Supports[i]})
			free = 0
		}
	}
	var geometry *shape.Geometry
	return func(refine float64) (*scene, error) {
		var err error
		if geometry == nil {
			if geometry, err = shape.NewGeometry(&alone); err != nil {
				return nil, err
			}
		}
		b, err := design.MeshAndBuild(geometry, refine*topRefine)
		if err != nil {
			return nil, err
		}
		return topScene(b, free), nil
	}
}

// topRefine multiplies the case's own mesh.refine for the triangles on which the fit goes forward; it is
// mended by those of the case itself.
const topRefine = 0.5

// bar takes a bar's weight and tones.
func (p *planner) bar(i int) {
	f, b := p.f, &p.f.Bars[i]
	key := tree.EntryKey("bar", i+1)
	across := b.Along == "across"
	place := len(woodKeys()) + i
	if f.Blank != nil {
		place++
	}
	flat := flatPiece{length: float64(b.Length), width: float64(b.Width), axes: axesOf(f, across, false), fine: true,
		thickness: [2]float64{float64(b.Thickness), float64(b.Thickness)}}
	if b.Held == "supports" {
		span := shareOr(float64(b.Span), flat.length)
		flat.lines, flat.hinged = []float64{-span / 2, span / 2}, true
	}
	s := &setup{name: b.Name, make: flat.make, thickness: place, bar: &flat, strip: &flat}
	if n := len(b.Flexure) + len(b.Torsion); n > 0 {
		s.count = n + more
	}
	p.setups = append(p.setups, s)
	p.tones(s, flexure, b.Flexure, b.ToneNoise, key+".flexure")
	p.tones(s, torsion, b.Torsion, b.ToneNoise, key+".torsion")
	if b.Weight > 0 {
		p.readings = append(p.readings, reading{kind: weight, setup: s, value: float64(b.Weight), sd: shareOr(float64(b.WeightNoise)/float64(b.Weight), 0.005),
			key: key + ".weight", words: "weight of " + b.Name, unit: "g"})
	}
	if len(b.Edgewise) == 0 {
		return
	}
	edge := flat
	edge.width, edge.thickness, edge.axes = flat.thickness[0], [2]float64{flat.width, flat.width}, axesOf(f, across, true)
	e := &setup{name: b.Name, make: edge.make, thickness: place, onEdge: true, bar: &edge, strip: &edge, count: len(b.Edgewise) + more}
	p.setups = append(p.setups, e)
	p.tones(e, flexure, b.Edgewise, b.ToneNoise, key+".edgewise")
}

// tones takes the tones of one kind of a bar.
func (p *planner) tones(s *setup, kind kind, list bench.Tones, noise float64, key string) {
	words := map[kindOfKey]string{{flexure, false}: "bending", {torsion, false}: "twisting", {flexure, true}: "bending edgewise"}[kindOfKey{kind, s.onEdge}]
	for k, hz := range list {
		if hz > 0 {
			p.readings = append(p.readings, reading{kind: kind, setup: s, order: k, value: hz, sd: noise, key: key, unit: "Hz",
				words: fmt.Sprintf("%s, %s, %g Hz", s.name, words, hz)})
		}
	}
}

type kindOfKey struct {
	kind kind
	edge bool
}

// presses takes the gauges.
func (p *planner) presses() error {
	for i := range p.f.Presses {
		pr := &p.f.Presses[i]
		if p.f.Told(pr) {
			continue
		}
		s := &setup{name: pr.Name, key: tree.EntryKey("press", i+1), thickness: len(woodKeys())}
		if bar := p.f.BarOf(pr); bar != nil {
			s.make, s.thickness = p.pressedBar(bar, pr)
		} else {
			var err error
			if s.make, s.deep, err = p.blankMaker("bare", pr); err != nil {
				return err
			}
		}
		one := press{at: pr.At, size: [2]float64{float64(pr.Size[0]), float64(pr.Size[1])}, force: pr.Newtons()}
		for k := range pr.Gauges {
			g := &pr.Gauges[k]
			one.gauges = append(one.gauges, g.At)
			words := fmt.Sprintf("%s, %s", pr.Name, g.Name)
			if g.Measured == nil {
				p.asked = append(p.asked, reading{kind: gauge, setup: s, order: k, value: float64(g.Target), unit: "mm", words: words})
				continue
			}
			sink := float64(*g.Measured)
			sd := shareOr(float64(g.Noise), 0.005+0.01*math.Abs(sink))
			p.readings = append(p.readings, reading{kind: gauge, setup: s, order: k, value: sink, sd: sd, unit: "mm",
				key: tree.EntryKey(tree.EntryKey("press", i+1)+".gauge", k+1), words: words})
		}
		s.presses = []press{one}
		p.setups = append(p.setups, s)
	}
	return nil
}

// pressedBar is a bar on what it was pressed on.
func (p *planner) pressedBar(b *bench.Bar, pr *bench.Press) (maker, int) {
	f := p.f
	place := len(woodKeys())
	if f.Blank != nil {
		place++
	}
	for i := range f.Bars {
		if &f.Bars[i] == b {
			place += i
		}
	}
	flat := flatPiece{length: float64(b.Length), width: float64(b.Width), axes: axesOf(f, b.Along == "across", false), fine: true,
		thickness: [2]float64{float64(b.Thickness), float64(b.Thickness)}}
	flat.lies(pr)
	return flat.make, place
}

// shareOr is v, or another if it is 0.
func shareOr(v, other float64) float64 {
	if v > 0 {
		return v
	}
	return other
}

// thinBlank says whether a flat blank is taken for a thin plate.
func thinBlank(f *bench.File) bool {
	b := f.Blank
	if b.Shear != nil {
		return !*b.Shear
	}
	if b.Shape == "bar" || f.RingAngle != 0 {
		return false
	}
	across := math.Min(float64(b.Length), float64(b.Width))
	if b.Outline != nil {
		lo, hi := plane.Bounds(b.Outline.Points)
		across = math.Min(hi[0]-lo[0], hi[1]-lo[1])
	}
	return b.Thickness.Mean() < thick*across
}

// thick is the share of a blank's narrower side from which shear counts: 1/40. Below it shear takes two to
// four percent off the stiffness in twisting, at the edges, and next to nothing off that in bending.
const thick = 0.025

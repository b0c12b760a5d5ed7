package stage

import (
	"context"
	"fmt"
	"slices"

	"archload/cases/design"
	"archload/cases/tone"
	"archload/viz/scene"
)

// sound finds the tones of a design under a want, unless they are there.
func (d *Answered) sound(ctx context.Context, w Want, o design.Options) (err error) {
	c := d.Live.Case()
	if state := stateOf(c, w); d.Sound == nil || d.Sound.State != state {
		d.Sound, d.Soundless, err = findSound(ctx, c, state, o)
	}
	return err
}

// ToneOf is which tone of design i is drawn, from 0: the wanted one of the first design,
// and of the second the one that swings most alike; -1: none.
func (s *Shown) ToneOf(i int) int {
	d := s.Designs[i]
	if d.Sound == nil || s.Designs[0].Sound == nil {
		return -1
	}
	n := max(1, s.Want.Tone)
	if i == 0 {
		if n > len(d.Sound.Report.Tones) {
			return -1
		}
		return n - 1
	}
	for _, l := range s.Like {
		if l.First == n {
			return l.Tone - 1
		}
	}
	return -1
}

// matched sets the tones of the second design beside those of the first by their shapes.
func (s *Shown) matched() []tone.Likeness {
	if len(s.Designs) < 2 || s.Designs[0].Sound == nil || s.Designs[1].Sound == nil {
		return nil
	}
	a, b := s.Designs[0].Sound, s.Designs[1].Sound
	r := *b.Report
	r.Match(b.Shapes, a.Report, a.Shapes)
	return r.Like
}

// Swung are the scenes at a share of the swing, from -1 to 1, of the tone that is drawn.
func (s *Shown) Swung(share float64) []*scene.Scene {
	var out []*scene.Scene
	for i := range s.Designs {
		out = append(out, s.swung(i, share))
	}
	return out
}

// swung is the scene of one design.
func (s *Shown) swung(i int, share float64) *scene.Scene {
	d, k := s.Designs[i], s.ToneOf(i)
	if k < 0 {
		words := d.Soundless
		switch {
		case words != "":
		case d.Sound == nil:
			words = "tones are found when the hand rests"
		default:
			words = fmt.Sprintf("none of its tones swings like tone %d of A", max(1, s.Want.Tone))
		}
		return d.Skeleton.Build(scene.Show{Solution: d.Now, Load: s.Want.Load, Field: scene.Wood, Enlarge: 1, Strings: s.Want.Strings, Statement: words})
	}
	o := d.Sound
	by, most := o.swing(k)
	values := o.Shapes.Normal[k]
	if i > 0 && s.against(k) {
		by, values = -by, times(values, -1)
	}
	return o.Skeleton.Build(scene.Show{Solution: o.moved(k, share*by), Load: 1, Field: scene.Tone, Values: values, Range: &[2]float64{-1, 1}, Enlarge: 1,
		Strings: s.Want.Strings && o.State == design.Strung, Statement: o.words(k, most), Pins: told(pinsOf(s.Want.Pins, i))})
}

// told are the pins that say something of their own: a swing has no readings.
func told(pins []scene.Pin) []scene.Pin {
	return slices.DeleteFunc(pins, func(p scene.Pin) bool { return p.Text == "" })
}

// against tells whether tone k of the second design is written in the opposite sense to
// that of the first one beside it: up where that goes down most.
func (s *Shown) against(k int) bool {
	a, b := s.Designs[0].Sound, s.Designs[1].Sound
	at := slices.Index(a.Shapes.Normal[s.ToneOf(0)], 1)
	if at < 0 {
		return false
	}
	p, inside := b.Shapes.Moving.Built.OnOuter(a.Shapes.Moving.Built.Mesh.Points[at])
	if !inside {
		return false
	}
	sum := 0.0
	for c, n := range b.Shapes.Moving.Built.Mesh.Tris[p.Shell] {
		sum += p.L[c] * b.Shapes.Normal[k][n]
	}
	return sum < 0
}

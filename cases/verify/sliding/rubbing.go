package sliding

import (
	"errors"
	"fmt"
	"math"

	"archload/cases/verify/problem"
	"archload/fem/contact"
	"archload/fem/element"
)

// place is a pad of a block that is held where it stands, on a ground of its own. At a share s of a change the block has
// come nearer there by near + s closes, and has gone sideways by s along.
type place struct {
	gap, near, closes, along float64 // mm
	at                       float64 // share at which it begins to bear or lets go, 1; 0: neither
	drag, slid               float64 // at the end, N and mm
}

// give is by how much the ground of a place gives, mm/N, and rough its coefficient of friction.
const (
	give  = 1e-3
	rough = 0.4
)

// places are by Coulomb's law, c being the ground's give and v, t how far it comes near and goes aside: one that stands off by
// g closes at s = g/v and then presses with (s v - g)/c; it sticks if t < μ v, and drags with (1 - s) t/c in the end,
// else it slides from there on, over (1 - s) t - μ (v - g). One that is pressed with n/c opens at s = -n/v, and has slid s t by then, since it lets go of all its drag; one that
// stays pressed sticks until its drag, s t/c, is μ (n + s v)/c, and has slid t - μ (n + v) in the end.
func places() map[string][]place {
	out := map[string][]place{}
	for k := range 8 {
		d := 0.01 + 0.01*float64(k)
		sticks := place{gap: d, closes: 0.1, along: 0.02, at: d / 0.1}
		sticks.drag = sticks.along * (1 - sticks.at) / give
		slides := place{gap: d, closes: 0.1, along: 0.08, at: d / 0.1}
		slides.drag = rough * (slides.closes - d) / give
		slides.slid = slides.along*(1-slides.at) - give*slides.drag
		opens := place{near: d, closes: -0.1, along: 0.02, at: d / 0.1}
		opens.slid = opens.along * opens.at
		out["sticks"], out["slides"], out["opens"] = append(out["sticks"], sticks), append(out["slides"], slides), append(out["opens"], opens)
		for _, v := range []float64{-0.008, 0.03} { // its press falls or rises, and it slides in the end
			pressed := place{near: d, closes: v, along: 0.08}
			pressed.drag = rough * (d + v) / give
			pressed.slid = pressed.along - give*pressed.drag
			out["pressed"] = append(out["pressed"], pressed)
		}
	}
	return out
}

// rubbing takes a stiff block with such places through the change, and back.
func rubbing() (problem.Readings, error) {
	out := problem.Readings{}
	for kind, all := range places() {
		c, err := fitted(all)
		if err != nil {
			return nil, err
		}
		var states [3]*contact.State // as the change begins, there and back again
		for k, share := range []float64{0, 1, 0} {
			if states[k], err = c.swell(shift(all, share)); err != nil {
				return nil, err
			}
		}
		for i := range all {
			p, there := &all[i], states[1]
			p.compare(out, kind, there, corners+i)
			if p.at == 0 {
				continue
			}
			err := errors.Join(
				compareTurn(out, kind+" at", there, corners+i, p.closes > 0, p.at),
				compareTurn(out, kind+" back at", states[2], corners+i, p.closes < 0, 1-p.at))
			if err != nil {
				return nil, fmt.Errorf("%s, place %d: %w", kind, i, err)
			}
		}
	}
	return out, nil
}

// compare sets drag and slide at the end of the change beside those of the closed form.
func (p *place) compare(out problem.Readings, kind string, st *contact.State, pad int) {
	drag := math.Hypot(st.Lambda[3*pad+1], st.Lambda[3*pad+2])
	out[kind+" drag"] = max(out[kind+" drag"], math.Abs(drag-p.drag)/(rough*0.1/give))
	if p.slid > 0 {
		out[kind+" slid"] = max(out[kind+" slid"], math.Abs(st.Slid[pad]/p.slid-1))
	}
}

// compareTurn sets the share of a change at which a pad closes or opens beside that of the closed form.
func compareTurn(out problem.Readings, name string, st *contact.State, pad int, closes bool, want float64) error {
	at, err := turnOf(st, pad, closes)
	out[name] = max(out[name], math.Abs(at-want))
	return err
}

// corners is the number of pads that hold the block.
const corners = 4

// fitted is a stiff block pressed down at its four corners so hard that they stick, with such places in its middle.
func fitted(all []place) (*changing, error) {
	s := &stand{}
	s.bar(element.Rectangle{Width: 20, Height: 20, E: 1e11, Gxy: 1e11, Gxz: 1e11}, 0, []float64{-40, 0, 40})
	for _, i := range []int32{0, 2} {
		for _, y := range []float64{-20, 20} {
			s.pad(i, [3]float64{s.body.Nodes[i][0], y, 0}, level())
		}
		s.load(i, s.body.Nodes[i], [3]float64{0, 0, -1e3})
	}
	gap := make([]float64, corners)
	for i := range all {
		s.pad(1, s.body.Nodes[1], level())
		s.pads[corners+i].Bedding = [2]float64{give, give}
		gap = append(gap, all[i].gap)
	}
	return s.settle(rough, gap)
}

// shift is how the rows of the places have moved at a share of the change.
func shift(all []place, share float64) []float64 {
	rows := make([]float64, 3*(corners+len(all)))
	for i, p := range all {
		j := 3 * (corners + i)
		rows[j], rows[j+1] = -p.near-share*p.closes, share*p.along
	}
	return rows
}

// turnOf is the share of a change at which a pad closed or opened, the one time that it did.
func turnOf(st *contact.State, pad int, closes bool) (float64, error) {
	at, n := 0.0, 0
	for _, e := range st.Events {
		if int(e.Pad) == pad {
			at, n = e.Load, n+1
			if e.Closes != closes {
				return 0, fmt.Errorf("at %.3g: closes is %v", at, e.Closes)
			}
		}
	}
	if n != 1 {
		return 0, fmt.Errorf("%d events, want 1", n)
	}
	return at, nil
}

package setup

import (
	"context"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/shape"
)

// Of is the action sheet of a case. Without a wish it tells how the design stands.
// Faults of the case; an error that names the way where nothing fulfils the
// wish; what design.Solve may answer.
func Of(ctx context.Context, c *cases.Case, w *Wish, o design.Options) (*Sheet, error) {
	g, err := shape.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	b, err := newBoard(c, g)
	if err != nil {
		return nil, err
	}
	top, err := design.PrepareGeometry(ctx, g, o)
	if err != nil {
		return nil, err
	}
	t := &tops{board: b, top: top, opt: o}
	s := &Sheet{Format: cases.Format, Units: cases.UnitsNote, Title: c.Title, Wish: w, Joint: b.joint, Cautions: cautions()}
	sol, err := t.answer(ctx, b.was)
	if err != nil {
		return nil, err
	}
	if err := t.ages(ctx, sol); err != nil {
		return nil, err
	}
	asItIs := t.way("as it is", b.was, sol)
	s.Ways = []Way{*asItIs}
	if w != nil {
		if err := t.both(ctx, s, *w); err != nil {
			return nil, err
		}
	}
	s.Changes, err = t.changes(ctx, asItIs)
	return s, err
}

// both looks for the two ways to a wish.
func (t *tops) both(ctx context.Context, s *Sheet, w Wish) error {
	neck, err := t.find(ctx, w, "by the neck", leastNeck, mostNeck, func(s setting, v float64) setting { s.neck = v; return s })
	if err != nil {
		return err
	}
	bridge, err := t.find(ctx, w, "by the bridge", leastSaddle, mostSaddle, func(s setting, v float64) setting { s.saddle = v; return s })
	if err != nil {
		return err
	}
	s.Ways = append(s.Ways, *neck, *bridge)
	return nil
}

// changes tries a degree of the neck and a millimetre of saddle and anchor.
func (t *tops) changes(ctx context.Context, was *Way) ([]Change, error) {
	var out []Change
	for _, k := range []struct {
		key, unit string
		to        setting
	}{
		{"neck_angle", "deg", setting{t.was.neck + 1, t.was.saddle, t.was.anchor}},
		{"saddle_height", "mm", setting{t.was.neck, t.was.saddle + 1, t.was.anchor}},
		{"anchor_height", "mm", setting{t.was.neck, t.was.saddle, t.was.anchor + 1}},
	} {
		sol, err := t.answer(ctx, k.to)
		if err != nil {
			return nil, err
		}
		w := t.way("", k.to, sol)
		out = append(out, Change{Key: k.key, Step: 1, Unit: k.unit, Downforce: w.Downforce - was.Downforce, Shift: w.Shift - was.Shift,
			AtPitch: [2]float64{w.AtPitch[0] - was.AtPitch[0], w.AtPitch[1] - was.AtPitch[1]}})
	}
	return out, nil
}

// cautions are what must be known to use the sheet.
func cautions() []string {
	return []string{
		"The board is taken as straight: its relief and the bend of the neck under the strings are left out, and come on top.",
		"Raise the tension in steps, and look after each one. An anchor that is lower presses the top harder: see strength and foot pressure of the design before you cut.",
		"Settled: after fifty years under the strings, with half of the creep that the wood cards tell to a third more; an indication.",
	}
}

package fit

import (
	"context"

	"archload/materials"
)

// findMend compares a setup on its rough triangles with triangles half as large, for the unknowns at x.
func (s *setup) findMend(ctx context.Context, fine *scene, card *materials.Card, x []float64, workers int) error {
	a, err := s.evaluate(ctx, s.rough, card, x, workers, false, nil)
	if err != nil {
		return err
	}
	b, err := s.evaluate(ctx, fine, card, x, workers, false, nil)
	if err != nil {
		return err
	}
	s.mend = mend{}
	mean, count := 0.0, 0.0
	var lone []int
	for i := range a.tones {
		best := likest(a.tones[i].shape, b.tones)
		s.mend.shapes = append(s.mend.shapes, a.tones[i].shape)
		s.mend.tones = append(s.mend.tones, 0)
		if best < 0 {
			lone = append(lone, i)
			continue
		}
		s.mend.tones[i] = richardson * (b.tones[best].y - a.tones[i].y)
		mean, count = mean+s.mend.tones[i], count+1
	}
	if s.strip != nil {
		off := torsionMend(s.strip, wood(card, x))
		for i := range a.tones {
			if a.tones[i].odd {
				s.mend.tones[i] += off
			}
		}
	}
	for _, i := range lone {
		s.mend.tones[i] = mean / max(count, 1)
	}
	for i := range a.sinks {
		s.mend.sinks = append(s.mend.sinks, richardson*(b.sinks[i].y/a.sinks[i].y-1))
	}
	return nil
}

// findShear sees what shear through the thickness, which dies out in thin layers at the edges, would take off the tones of
// a piece that is taken for thin.
func (s *setup) findShear(ctx context.Context, refine float64, card *materials.Card, x []float64, workers int) error {
	if s.deep == nil || s.count == 0 {
		return nil
	}
	sc, err := s.deep(refine)
	if err != nil {
		return err
	}
	deep, err := s.evaluate(ctx, sc, card, x, workers, false, nil)
	if err != nil {
		return err
	}
	thin, err := s.evaluate(ctx, s.rough, card, x, workers, false, nil)
	if err != nil {
		return err
	}
	s.mend.apply(thin)
	s.mend.shear = make([]float64, len(s.mend.shapes))
	for k, shape := range s.mend.shapes {
		a, b := likest(shape, thin.tones), likest(shape, deep.tones)
		if a >= 0 && b >= 0 {
			s.mend.shear[k] = deep.tones[b].y - thin.tones[a].y
		}
	}
	return nil
}

// likest is the tone whose shape is surely a given one; -1 if there is none.
func likest(shape []float64, list []found) int {
	best, most := -1, surelyAlike
	for i := range list {
		if m := alike(shape, list[i].shape); m > most {
			best, most = i, m
		}
	}
	return best
}

// richardson is by how much the change from rough to fine triangles is to be multiplied.
const richardson = 4.0 / 3

// surelyAlike is how much two shapes must be the same to be of one tone.
const surelyAlike = 0.6

// apply mends what was found on the rough triangles.
func (m *mend) apply(st *state) {
	for i := range st.tones {
		best, most := -1, 0.0
		for k, shape := range m.shapes {
			if a := alike(st.tones[i].shape, shape); a > most {
				best, most = k, a
			}
		}
		if best >= 0 {
			st.tones[i].y += m.tones[best]
		}
	}
	for i := range st.sinks {
		f := 1 + m.sinks[i]
		st.sinks[i].y *= f
		for k := range st.sinks[i].row {
			st.sinks[i].row[k] *= f
		}
	}
}

package fit

import (
	"context"

	"archload/materials"
)

// findMend compares a setup on its rough triangles with triangles half as large, for the unknowns at x.
func (s *setup) findMend(ctx context.Context, fine *scene, card *materials.Card, x []float64, workers int) error {
	a, err := s.evaluate(ctx, s.rough, card, x, workers, false)
	if err != nil {
		return err
	}
	b, err := s.evaluate(ctx, fine, card, x, workers, false)
	if err != nil {
		return err
	}
	s.mend = mend{}
	mean, count := 0.0, 0.0
	var lone []int
	for i := range a.tones {
		best, most := -1, surelyAlike
		for k := range b.tones {
			if m := alike(a.tones[i].shape, b.tones[k].shape); m > most {
				best, most = k, m
			}
		}
		s.mend.shapes = append(s.mend.shapes, a.tones[i].shape)
		s.mend.tones = append(s.mend.tones, 0)
		if best < 0 {
			lone = append(lone, i)
			continue
		}
		s.mend.tones[i] = richardson * (b.tones[best].y - a.tones[i].y)
		mean, count = mean+s.mend.tones[i], count+1
	}
	for _, i := range lone {
		s.mend.tones[i] = mean / max(count, 1)
	}
	for i := range a.sinks {
		s.mend.sinks = append(s.mend.sinks, richardson*(b.sinks[i].y/a.sinks[i].y-1))
	}
	return nil
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

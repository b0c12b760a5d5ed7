package tone

import (
	"context"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/fem/vibration"
)

// Loss is how much a tone loses by itself.
type Loss struct {
	Hz   float64 `json:"hz"`
	Loss float64 `json:"loss"` // 1: what it loses in a radian, as a share of its energy
}

// woodLosses lists what hangs on the moduli along and across the grain of each wood whose losses are
// known, with that loss: braces of one wood are one.
func woodLosses(c *cases.Case) (levers []lever, losses []float64) {
	var groups [][]string
	for _, key := range tree.SortedKeys(c.Cards) {
		card := c.Cards[key]
		if card.Loss.Along == 0 || card.Loss.Across == 0 {
			continue
		}
		found := false
		for i, g := range groups {
			if c.Cards[g[0]].Name == card.Name && c.Cards[g[0]].Loss == card.Loss {
				groups[i], found = append(g, key), true
			}
		}
		if !found {
			groups = append(groups, []string{key})
		}
	}
	all := stiffnesses()
	for _, g := range groups {
		card := c.Cards[g[0]]
		levers = append(levers, lever{words: card.Name + " along the grain", woods: g, constants: all[:1]},
			lever{words: card.Name + " across the grain and in shear", woods: g, constants: all[1:]})
		losses = append(losses, card.Loss.Along, card.Loss.Across)
	}
	return levers, losses
}

// loseByWood gives each shape the loss of its woods, each direction with its share of the strain
// energy; what hangs on no wood with known losses keeps the case's own.
func loseByWood(ctx context.Context, m *design.Moving, red *vibration.Reduced, o design.Options) error {
	var t swings
	var of []int
	for i, l := range red.Values {
		if l > still*red.Values[len(red.Values)-1] {
			t.shapes, t.squares, of = append(t.shapes, red.Shape(i)), append(t.squares, l), append(of, i)
		}
	}
	levers, losses := woodLosses(m.Case)
	own := m.Case.Moving().Loss
	for k := range levers {
		o.Say("losses: " + levers[k].words)
		shares, err := slopes(ctx, m, &levers[k], t, o.WorkerCount())
		if err != nil {
			return err
		}
		for i, s := range shares {
			red.Loss[of[i]] += s * (losses[k] - own)
		}
	}
	return nil
}

// still is the square of a frequency, as a share of the highest one, below which a free plate only
// floats.
const still = 1e-12

// lossAt is the loss of the tone nearest to a frequency, 1; otherwise where there is none.
func lossAt(losses []Loss, hz, otherwise float64) float64 {
	best, loss := -1.0, otherwise
	for _, l := range losses {
		if d := max(hz/l.Hz, l.Hz/hz); best < 0 || d < best {
			best, loss = d, l.Loss
		}
	}
	return loss
}

package fit

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"archload/fem/parallel"
	"archload/materials"
)

// TestCoverage cuts 100 blanks at random from the scatter of their card, lets Ritz's method swing them, thin, and
// reads weight, thickness and six tones with the errors that the file states: in 95 of 100 each constant
// that the tones know must lie within twice its stated deviation. Half of the blanks are of wood that strains in
// shear, which a thin blank's fit does not see: that, too, must be within what it states.
func TestCoverage(t *testing.T) {
	const trials, workers = 100, 2
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		t.Fatal(err)
	}
	base := blank{wood: card.Wood, like: "sitka-spruce", long: 400, wide: 300, thick: [2]float64{4, 4}, tones: 6}
	keys := []string{"density", "EL", "ER", "GLR"}
	within := make([][]bool, trials)
	f := loaded(t, base.text(t, asRead))
	one, err := newFitter(context.Background(), f, Options{coarse: true})
	if err != nil {
		t.Fatal(err)
	}
	left := make([]int, trials)
	parallel.Chunks(workers, trials, 1, func(from, to int) {
		for i := from; i < to; i++ {
			r := rand.New(rand.NewPCG(17, uint64(i)))
			x := make([]float64, len(one.unknowns))
			for k := range x {
				x[k] = one.unknowns[k].sd * r.NormFloat64()
			}
			b := base
			b.wood, b.shear = wood(&f.Card, x), i%2 == 1
			thick := 4 * math.Exp(x[len(woodKeys())])
			b.thick = [2]float64{thick, thick}
			tones, err := b.plate().Tones(b.tones)
			if err != nil {
				t.Error(err)
				return
			}
			own := *one
			own.readings = slices.Clone(one.readings)
			for k := range own.readings {
				rd := &own.readings[k]
				truth := b.weight()
				if rd.kind == tone {
					truth = tones[k-1] // they are sorted behind the weight
				}
				rd.value = truth * math.Exp(rd.sd*r.NormFloat64())
			}
			a, err := own.find(context.Background())
			if err != nil {
				t.Error(err)
				return
			}
			own.doubtful(a)
			rep := own.report(a)
			left[i] = len(rep.LeftOut)
			truth := valuesOf(&b.wood)
			for _, key := range keys {
				c := rep.Wood["made"][key]
				off := math.Log(c.Value / truth[slices.Index(woodKeys(), key)])
				within[i] = append(within[i], math.Abs(off) <= 2*c.SD/c.Value)
			}
		}
	})
	wrong := 0
	for _, n := range left {
		wrong += n
	}
	for k, key := range keys {
		count := 0
		for i := range within {
			if within[i][k] {
				count++
			}
		}
		t.Logf("%s: within two stated deviations in %d of %d", key, count, trials)
		if count < 95 {
			t.Errorf("%s: within two stated deviations in %d of %d, want 95", key, count, trials)
		}
	}
	t.Logf("readings left out that were right: %d of %d", wrong, trials*7)
	if wrong > 7 {
		t.Errorf("%d right readings of %d were left out, want one in a hundred at most", wrong, trials*7)
	}
}

package figure

import (
	"fmt"

	"archload/viz/canvas"
)

// FootSection is one foot of the bridge in the cross-arch, one value per
// station; forces and gaps of stations one behind the other are summed and
// averaged by the caller.
type FootSection struct {
	Name   string
	X      []float64 // place across, mm, rising
	Relief []float64 // gap as fitted, unloaded, mm
	Gap    []float64 // gap left at full load, mm
	Force  []float64 // force on the top at each station, N
}

func (f FootSection) check() error {
	n := len(f.X)
	if n == 0 || len(f.Relief) != n || len(f.Gap) != n || len(f.Force) != n {
		return fmt.Errorf("foot %q: want equally many places, reliefs, gaps and forces, found %d, %d, %d, %d",
			f.Name, n, len(f.Relief), len(f.Gap), len(f.Force))
	}
	for i := 1; i < n; i++ {
		if !(f.X[i] > f.X[i-1]) {
			return fmt.Errorf("foot %q: station %d at %g mm does not follow %g mm", f.Name, i, f.X[i], f.X[i-1])
		}
	}
	return nil
}

// reach returns the ends of station i, halfway to its neighbours, mm.
func (f FootSection) reach(i int) (from, to float64) {
	n := len(f.X)
	if n == 1 {
		return f.X[0] - 3, f.X[0] + 3
	}
	half := func(a, b int) float64 { return (f.X[b] - f.X[a]) / 2 }
	before, after := half(max(i-1, 0), max(i, 1)), half(min(i, n-2), min(i+1, n-1))
	return f.X[i] - before, f.X[i] + after
}

// perMM is the force of station i on each mm of the foot's length, N/mm, which
// does not hang on how many stations there are.
func (f FootSection) perMM(i int) float64 {
	from, to := f.reach(i)
	return f.Force[i] / (to - from)
}

// Share is the force of a part of the bearing length.
type Share struct {
	Name     string  // "bass end", "middle", "treble end"
	From, To float64 // mm across
	Force    float64 // N
}

// CrossArchInput is what CrossArch draws.
type CrossArchInput struct {
	Caption canvas.Caption
	Section Section
	Feet    []FootSection // none: the plate alone
	Shares  []Share
	Stretch float64 // heights against widths; 0: chosen
	Enlarge float64 // movements against widths; 0: chosen
}

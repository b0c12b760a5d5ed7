package study

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/tone"
	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// Sample holds the compared numbers of some designs in planks drawn at random.
// Each draw is a real solve: a new factor, and the contact followed anew.
type Sample struct {
	planks int
	seed   uint64
	values [][][]float64 // by draw, design, quantity; NaN: cannot be had
	failed int           // draws in which a design had no answer at all
}

// DrawSample solves designs in n sets of planks, on the meshes of FindSpread.
// Every constant is lognormal with the card's value as its mean and the
// coefficient of variation of Card.Spread, independent of every other unless its
// card says how they scatter together;
// where role and wood are the same, all designs of a draw are cut from the same
// plank. The draws are spread evenly over the range of each constant (see
// draws), so that a few hundred give a range to a few percent. The sample
// depends on nothing but n, seed and the designs.
func DrawSample(ctx context.Context, sols []*design.Solution, n int, seed uint64, o design.Options) (*Sample, error) {
	s := &Sample{planks: n, seed: seed, values: make([][][]float64, n)}
	var union []plank
	for _, sol := range sols {
		for _, p := range planks(sol.Top.Built.Case) {
			if !slices.ContainsFunc(union, p.same) {
				union = append(union, p)
			}
		}
	}
	times := draws(union, n, seed)
	scales := make([][]float64, len(sols))
	for d, sol := range sols {
		scales[d] = companionScales(sol)
	}
	err := inParallel(ctx, o, n, func(i int) {
		for d, sol := range sols {
			v := inPlanks(ctx, sol, union, times[i])
			for h := range v {
				v[h] *= scales[d][h]
			}
			s.values[i] = append(s.values[i], v)
		}
	})
	if err != nil {
		return nil, err
	}
	for _, designs := range s.values {
		if slices.ContainsFunc(designs, func(v []float64) bool { return v == nil }) {
			s.failed++
		}
	}
	return s, nil
}

// draws gives n times the factors of every constant of every plank: a Latin
// hypercube, in which the middle of each of n equally likely stretches of every
// constant is met once, in an order of its own (M. D. McKay, R. J. Beckman,
// W. J. Conover, Technometrics 21 (1979) 239-245), put so that no two
// constants go together by chance (A. B. Owen, Journal of the American
// Statistical Association 89 (1994) 1517-1522; both from memory). The orders
// come from a generator seeded by seed (PCG).
func draws(planks []plank, n int, seed uint64) [][]map[string]float64 {
	out := make([][]map[string]float64, n)
	for i := range out {
		out[i] = make([]map[string]float64, len(planks))
		for k := range planks {
			out[i][k] = map[string]float64{}
		}
	}
	constants := scattering(planks, true)
	all := hypercube(len(constants), n, seed)
	tieTogether(all, constants, planks)
	for k, z := range all {
		c := constants[k]
		sd := logDeviation(c.cv)
		for i := range out {
			out[i][c.plank][c.key] = math.Exp(sd*z[i] - sd*sd/2)
		}
	}
	return out
}

// tieTogether lets the standard normal values of a plank's constants go together
// as its card says: with the correlations' Cholesky factor L, z becomes L z.
func tieTogether(all [][]float64, constants []constant, planks []plank) {
	for p := range planks {
		card := &planks[p].card
		if len(card.Together) == 0 {
			continue
		}
		var rows []int
		for i, c := range constants {
			if c.plank == p {
				rows = append(rows, i)
			}
		}
		l := lower(card, constants, rows)
		for j := range all[rows[0]] {
			z := make([]float64, len(rows))
			for a := range rows {
				for b := range a + 1 {
					z[a] += l.At(a, b) * all[rows[b]][j]
				}
			}
			for a, i := range rows {
				all[i][j] = z[a]
			}
		}
	}
}

// lower is the Cholesky factor of the correlations of some constants. A card's
// correlations are definite, those of some of its keys with them.
func lower(card *materials.Card, constants []constant, rows []int) *mat.TriDense {
	c := mat.NewSymDense(len(rows), nil)
	for a, i := range rows {
		c.SetSym(a, a, 1)
		for b := range a {
			c.SetSym(a, b, card.Correlation(constants[i].key, constants[rows[b]].key))
		}
	}
	var ch mat.Cholesky
	if !ch.Factorize(c) {
		panic("study: correlations of a card that was read are definite")
	}
	var l mat.TriDense
	ch.LTo(&l)
	return &l
}

// hypercube gives each of a number of quantities n standard normal values; over
// the values any two quantities are all but uncorrelated.
func hypercube(quantities, n int, seed uint64) [][]float64 {
	r := rand.New(rand.NewPCG(seed, 0))
	scores := make([]float64, n)
	for i := range scores {
		scores[i] = math.Sqrt2 * math.Erfinv((2*float64(i)+1)/float64(n)-1)
	}
	out := make([][]float64, quantities)
	for k := range out {
		out[k] = make([]float64, n)
		for i, j := range r.Perm(n) {
			out[k][i] = scores[j]
		}
	}
	const passes = 3 // forward, backward, forward
	for pass := range passes {
		for k := range out {
			others := out[:k]
			if pass == 1 {
				others = out[k+1:]
			}
			part(out[k], others, scores)
		}
	}
	return out
}

// part takes from z what it shares with the others and puts the scores back in
// the order of what is left.
func part(z []float64, others [][]float64, scores []float64) {
	rest := slices.Clone(z)
	for _, o := range others {
		shared, size := 0.0, 0.0
		for i := range o {
			shared += o[i] * rest[i]
			size += o[i] * o[i]
		}
		for i := range o {
			rest[i] -= shared / size * o[i]
		}
	}
	order := make([]int, len(z))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rest[a], rest[b]) })
	for rank, i := range order {
		z[i] = scores[rank]
	}
}

// companionScales are those of the compared numbers; see companionScale.
func companionScales(s *design.Solution) []float64 {
	own := companion(s, 1)
	base := own
	if on := scatterMesh(s); on != s {
		base = companion(on, 1)
	}
	var out []float64
	for _, q := range quantity.Compared() {
		out = append(out, companionScale(q, own, base))
	}
	return out
}

// inPlanks are the compared numbers in other planks; nil if there is no answer.
func inPlanks(ctx context.Context, s *design.Solution, drawn []plank, times []map[string]float64) []float64 {
	on := scatterMesh(s)
	own := planks(on.Top.Built.Case)
	mine := make([]map[string]float64, len(own))
	for i, p := range own {
		mine[i] = times[slices.IndexFunc(drawn, p.same)]
	}
	other, err := answerIn(ctx, on, cutFrom(on.Top.Built.Case, own, mine))
	if err != nil {
		return nil
	}
	r := answer.Summarize(other)
	tone.Judge(r, other, 1)
	var out []float64
	for _, q := range quantity.Compared() {
		out = append(out, float64(q.Get(r)))
	}
	return out
}

// drawn is the standard deviation of quantity h of a design, less that of the
// design from if it is not negative.
func (s *Sample) drawn(h, which, from int) *Drawn {
	var v []float64
	for _, d := range s.values {
		if d[which] == nil || from >= 0 && d[from] == nil {
			continue
		}
		x := d[which][h]
		if from >= 0 {
			x -= d[from][h]
		}
		if !math.IsNaN(x) {
			v = append(v, x)
		}
	}
	return &Drawn{Deviation: deviation(v), Known: len(v)}
}

// deviation is the standard deviation of a sample; none of fewer than two.
func deviation(v []float64) answer.Num {
	if len(v) < 2 {
		return answer.None()
	}
	mean, sum := 0.0, 0.0
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		sum += design.Sq(x - mean)
	}
	return answer.Num(math.Sqrt(sum / float64(len(v)-1)))
}

package study

import (
	"math"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
)

// Comparison sets designs side by side.
type Comparison struct {
	Format  int              `json:"format"`
	Units   string           `json:"units"`
	Cases   []string         `json:"cases"`
	Titles  []string         `json:"titles"`
	Differs []KeyDiff        `json:"differs"` // in the input
	Rows    []Row            `json:"rows"`    // first what decides, each part by how much it matters: see Row.Weight
	Wood    *Wooden          `json:"wood"`    // behind the ranges of the rows; null without them
	Reports []*answer.Report `json:"reports"`
}

// Row is one number in each case.
type Row struct {
	Key         string       `json:"key"` // of the quantity
	Name        string       `json:"name"`
	Unit        string       `json:"unit"`
	Values      []answer.Num `json:"values"`
	Ranges      []Range      `json:"ranges"`      // of each value; none if not wanted
	Differences []Difference `json:"differences"` // of the second and each further case from the first
	Weight      answer.Num   `json:"weight"`      // by which rows are ordered, 1; see weight. Null: it comes to it in one case and never in another, which goes before all else

	of quantity.Quantity
}

// Range is how sure a number is, in its own unit: half the width of each range.
type Range struct {
	Mesh   answer.Num `json:"mesh"`   // what the mesh may cost it; null if not estimated
	Wood   answer.Num `json:"wood"`   // one standard deviation from plank to plank, to first order; null if it cannot be had
	Edge   answer.Num `json:"edge"`   // one standard deviation by what scatters in the making of sides, lining and back; null where none are modelled
	Behind []Behind   `json:"behind"` // what the wood's range is made of
	Drawn  *Drawn     `json:"drawn"`  // the wood's range again, by drawing planks; null unless asked for
}

// Difference is what a case has more of a number than the first case.
type Difference struct {
	Value   answer.Num `json:"value"`   // in the number's unit
	Percent answer.Num `json:"percent"` // of the first case's; null if that is about zero or below its own range
	Mesh    answer.Num `json:"mesh"`    // its own ranges, as in Range: the same planks serve for both
	Wood    answer.Num `json:"wood"`
	Within  bool       `json:"within_wood_scatter"` // the wood's range of the difference is greater than the difference
	Drawn   *Drawn     `json:"drawn"`
}

// Compare sets solved cases side by side, without ranges. names are what the
// user called them.
func Compare(names []string, sols []*design.Solution, reps []*answer.Report) *Comparison {
	return CompareRanged(names, sols, reps, nil)
}

// CompareRanged sets solved cases side by side; spreads, one of each case, give
// the ranges. nil leaves them out.
func CompareRanged(names []string, sols []*design.Solution, reps []*answer.Report, spreads []*Spread) *Comparison {
	c := &Comparison{Format: cases.Format, Units: cases.UnitsNote, Cases: names, Reports: reps, Differs: differs(sols)}
	for _, r := range reps {
		c.Titles = append(c.Titles, r.Title)
	}
	for _, q := range quantity.Compared() {
		if q.Event && slices.ContainsFunc(reps, func(r *answer.Report) bool { return r.Bridge != nil && !q.Applies(r) }) {
			continue // "never" would stand for a bridge that has no such place
		}
		row := Row{Key: q.Key, Name: q.Title(), Unit: q.Unit, Ranges: []Range{}, of: q}
		known := false
		for _, r := range reps {
			v := q.Get(r)
			known = known || v.Known()
			row.Values = append(row.Values, v)
		}
		if !known {
			continue
		}
		row.differ()
		if spreads != nil {
			row.addRanges(reps, spreads)
		}
		row.weigh()
		c.Rows = append(c.Rows, row)
	}
	slices.SortStableFunc(c.Rows, byWeight)
	if spreads != nil {
		c.Wood = wooden(names, spreads)
		c.Wood.Changes = woodChanges(names, spreads)
	}
	return c
}

// differ fills in the differences from the first case.
func (r *Row) differ() {
	r.Differences = []Difference{}
	for _, v := range r.Values[1:] {
		d := Difference{Value: v - r.Values[0], Percent: answer.None(), Mesh: answer.None(), Wood: answer.None()}
		if r.Unit != "dB" && math.Abs(float64(r.Values[0])) >= 2.5*math.Pow10(-r.of.Digits) { // of less than its last digits nothing can be told
			d.Percent = 100 * d.Value / answer.Num(math.Abs(float64(r.Values[0])))
		}
		r.Differences = append(r.Differences, d)
	}
}

// Quantity is what the row shows.
func (r *Row) Quantity() quantity.Quantity { return r.of }

// Bare says whether the row is about the mesh: it has no ranges.
func (r *Row) Bare() bool { return r.of.Compare == quantity.UnderMesh }

// IsNought says whether the number of case i rounds to zero as it is printed.
func (r *Row) IsNought(i int) bool { return r.of.Nought(r.Values[i]) }

// addRanges fills in the ranges of values and differences.
func (r *Row) addRanges(reps []*answer.Report, spreads []*Spread) {
	for i, sp := range spreads {
		one := Range{Mesh: answer.None(), Wood: answer.None(), Edge: answer.None(), Behind: []Behind{}}
		if !r.Bare() {
			one = sp.Range(reps[i], r.of)
		}
		r.Ranges = append(r.Ranges, one)
		if i == 0 || r.Bare() {
			continue
		}
		d := &r.Differences[i-1]
		d.Wood = spreads[0].apart(sp, r.of)
		d.Mesh = spreads[0].meshApart(sp, r.of)
		d.Within = math.Abs(float64(d.Value)) < float64(d.Wood)
		if a := math.Abs(float64(r.Values[0])); a < float64(r.Ranges[0].Wood) || a < float64(r.Ranges[0].Mesh) {
			d.Percent = answer.None() // of what may as well be zero
		}
	}
}

// Range is how sure a number of an answer on the case's own mesh is.
func (sp *Spread) Range(r *answer.Report, q quantity.Quantity) Range {
	if !q.Get(r).Known() {
		return Range{Mesh: answer.None(), Wood: answer.None(), Edge: answer.None(), Behind: []Behind{}}
	}
	return Range{Mesh: sp.mesh(q), Wood: sp.wood(q), Edge: sp.edge(q), Behind: sp.behind(q)}
}

// weigh sets the row's weight, the greatest over its differences.
func (r *Row) weigh() {
	r.Weight = 0
	for i := range r.Differences {
		w := r.WeightOf(i)
		if !w.Known() {
			r.Weight = w
			return
		}
		r.Weight = max(r.Weight, w)
	}
}

// WeightOf is how much difference i matters, 1: with ranges, the difference
// over the greater of both numbers' wood ranges (how many times more the design
// changes the number than another plank would); without, the difference over
// the greater of both numbers. None: one design comes to it, the other never.
func (r *Row) WeightOf(i int) answer.Num {
	d, a, b := r.Differences[i], float64(r.Values[0]), float64(r.Values[i+1])
	if r.of.Event && r.Values[0].Known() != r.Values[i+1].Known() {
		return answer.None()
	}
	if !d.Value.Known() || r.Bare() {
		return 0
	}
	scale := math.Max(math.Max(math.Abs(a), math.Abs(b)), 1e-12)
	if len(r.Ranges) > 0 {
		least := 0.5 * math.Pow10(-r.of.Digits) // no number is worth more than is printed
		scale = math.Max(math.Max(float64(r.Ranges[0].Wood), float64(r.Ranges[i+1].Wood)), least)
	}
	if w := answer.Num(math.Abs(float64(d.Value)) / scale); w.Known() {
		return w
	}
	return 0
}

// within says whether every difference of the row lies within the wood's
// scatter or is none.
func (r *Row) within() bool {
	for _, d := range r.Differences {
		if !d.Within && !r.of.Nought(d.Value) {
			return false
		}
	}
	return true
}

// alike says whether no design has more or less of it, as it is printed.
func (r *Row) alike() bool {
	for i, d := range r.Differences {
		if d.Value.Known() && !r.of.Nought(d.Value) || r.of.Event && r.Values[0].Known() != r.Values[i+1].Known() {
			return false
		}
	}
	return len(r.Differences) > 0
}

// Part is the part of a comparison's table that a row belongs to.
type Part int

// The parts, in their order.
const (
	Decides Part = iota // what decides, beyond the wood's scatter
	Rest                // where the load goes and what else there is, beyond it
	Scatter             // differences that another plank could turn round
	Alike               // no difference
	OfMesh              // about the mesh
)

// Part says where the row belongs.
func (r *Row) Part() Part {
	switch {
	case r.Bare():
		return OfMesh
	case r.alike():
		return Alike
	case len(r.Differences) > 0 && len(r.Ranges) > 0 && r.within():
		return Scatter
	case r.of.Compare == quantity.UnderRest:
		return Rest
	}
	return Decides
}

// byWeight orders rows: by part, and in each the weightiest first.
func byWeight(a, b Row) int {
	if p, q := a.Part(), b.Part(); p != q {
		return int(p - q)
	}
	heavy := func(r Row) float64 {
		if !r.Weight.Known() {
			return math.Inf(1)
		}
		return float64(r.Weight)
	}
	switch x, y := heavy(a), heavy(b); {
	case x > y:
		return -1
	case x < y:
		return 1
	}
	return 0
}

// AddSample sets the ranges of a sample beside those of first order. The sample
// must be of the same designs in the same order.
func (c *Comparison) AddSample(s *Sample) {
	if c.Wood == nil {
		c.Wood = &Wooden{Constants: []Constant{}, Faults: []string{}}
	}
	c.Wood.Sample = &SampleHead{Planks: s.planks, Seed: s.seed, Failed: s.failed}
	all := quantity.Compared()
	for k := range c.Rows {
		r := &c.Rows[k]
		h := slices.IndexFunc(all, func(q quantity.Quantity) bool { return q.Key == r.Key })
		for i := range r.Ranges {
			if !r.Bare() {
				r.Ranges[i].Drawn = s.drawn(h, i, -1)
			}
		}
		for i := range r.Differences {
			if !r.Bare() {
				r.Differences[i].Drawn = s.drawn(h, i+1, 0)
			}
		}
	}
}

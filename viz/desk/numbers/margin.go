package numbers

import (
	"fmt"
	"math"
	"strings"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/study"
	"archload/viz/scale"
	"archload/viz/stage"
)

// Margin is how sure a number is: what may be between it and a real top of the same
// case, as far as it is known.
type Margin struct {
	all    float64 // root of the sum of squares, in the number's unit; NaN: nothing is known
	digits int
	words  string // its parts
	old    bool   // of the design before the last change
}

// marginOf joins the ranges of a number: they have nothing to do with each other, so
// that their squares add up.
func marginOf(q quantity.Quantity, r study.Range) Margin {
	m := Margin{all: math.NaN(), digits: q.Digits}
	sum, known := 0.0, false
	var parts []string
	unit, _, _ := strings.Cut(q.Unit, " of ")
	for _, part := range []struct {
		v    answer.Num
		from string
	}{{r.Wood, "another plank of the same wood"}, {r.Edge, "sides, lining and back as they come from the bench"}, {r.Mesh, "the triangles"}} {
		if !part.v.Known() {
			continue
		}
		known, sum = true, sum+float64(part.v)*float64(part.v)
		parts = append(parts, fmt.Sprintf("± %s %s: %s", scale.Fixed(float64(part.v), q.Digits), unit, part.from))
	}
	if !known {
		return m
	}
	m.all = math.Sqrt(sum)
	m.words = q.Title() + "\n" + strings.Join(parts, "\n")
	if len(r.Behind) > 0 && r.Behind[0].Share >= 0.01 {
		b := r.Behind[0]
		m.words += fmt.Sprintf("\nMost of the wood's share: %s of the %s (%.0f %%)", b.Constant, b.Plank, 100*b.Share)
	}
	return m
}

// text is the margin behind a number; nothing where it is less than is shown.
func (m Margin) text() string {
	t := scale.Fixed(m.all, m.digits)
	if math.IsNaN(m.all) || strings.Trim(t, "0.") == "" {
		return ""
	}
	if m.old {
		return " (± " + t + ")"
	}
	return " ± " + t
}

// margin is that of a quantity of a design at a share of its load, of whose answer it is; nil: it is not
// worked out yet. Before the ranges of wood and edge are, that of the design before the last change, if there
// was one, or the mesh's alone.
func margin(a *stage.Answered, c *stage.Certain, load float64, q quantity.Quantity, key string) Margin {
	if c != nil && c.Spread != nil {
		return marginOf(q, c.Spread.Range(c.Carved, q))
	}
	if e := a.EarlierAt(load); e != nil {
		m := marginOf(q, e.Spread.Range(e.Carved, q))
		if m.old = true; m.words != "" {
			m.words += "\n(±): of the design before the last change, until its own is worked out"
		}
		return m
	}
	if c == nil {
		return Margin{all: math.NaN()}
	}
	v, ok := c.Report.Error.Mesh[key]
	if !ok {
		v = answer.None()
	}
	return marginOf(q, study.Range{Mesh: v, Wood: answer.None(), Edge: answer.None()})
}

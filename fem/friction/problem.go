package friction

import (
	"errors"

	"archload/fem/sparse"
)

// Problem is a body on pads with dry friction: equations (1) to (3) of the package's
// comment. Rows are pad-major, the normal first and two tangents after it; the guides'
// rows come last, one each.
type Problem struct {
	A           []float64    // compliance of the rows, mm/N, row-major, symmetric
	R           [][6]float64 // movement of each row under the body's rigid motions
	B           []float64    // movement of each row at full load without forces, mm
	F           [6]float64   // resultant of the body's loads about its first node at full load, N and N·mm
	Self        float64      // work coefficient of the loads by themselves, N·mm
	Gap         []float64    // of each pad at rest, mm; 0: it touches
	Coefficient float64      // of friction, 1
	Tolerance   float64      // work that an increment may leave unaccounted for, of all work by load, 1; 0 means 1e-4

	factor *factor // the last one; nil: none
}

// factor is the system of one guess, factorised. Another guess at what slides, with other directions, is
// nearly that system as long as every pad does the same.
type factor struct {
	first  *float64 // of the compliance
	mu     float64
	guided bool
	does   []uint8 // by each pad
	n      int
	lu     *sparse.Square
	rows   []float64 // with rows exchanged, where lu found no factor; nil: lu serves
	piv    []int
}

// Kind is what a pad does.
type Kind uint8

// The kinds.
const (
	Open   Kind = iota // bears nothing
	Sticks             // bears and does not move sideways
	Slides             // bears and drags with all the friction that it has
)

// Moment is the contact at one load.
type Moment struct {
	Load   float64      // fraction of full load
	Force  []float64    // on each row, N
	Gap    []float64    // of each pad, mm; 0 where closed
	Side   [][2]float64 // where each pad stands sideways, mm, from rest
	Rho    [6]float64   // the body's rigid motion, mm and rad
	Kind   []Kind       // of each pad
	Guided bool         // the foot glides and the guides hold the body
	Turn   []float64    // of each pad that opened or closed in the increment that ends here: after which share of it
	Bears  [][2]float64 // how far each pad moved sideways in that increment while it bore, mm
	Slid   []float64    // how far each pad has slid while it bore, mm
	Work   float64      // of the loads, N·mm
	Lost   float64      // to friction, N·mm
	Loose  float64      // work that the increments' straight lines leave open, N·mm: see (7)

	held []float64    // where the guides stand, mm
	rise []float64    // of each row's force over the increment before, N for each unit of load; nil at first
	rate [][3]float64 // of each pad's gap and place sideways over the increment before, mm for each unit of load
}

// Path is the contact along the whole load.
type Path struct {
	Moments []Moment // from rest to full load
	Solves  int      // linear systems factorised

	factor *factor // the last one
}

// Last is the contact at full load.
func (p *Path) Last() *Moment { return &p.Moments[len(p.Moments)-1] }

// ErrNoRest says that no state of rest was found: the body tips or slides away.
var ErrNoRest = errors.New("friction: the foot finds no rest")

func (p *Problem) pads() int { return len(p.Gap) }

// guides is the number of guides.
func (p *Problem) guides() int { return len(p.B) - 3*len(p.Gap) }

package tone

import (
	"context"
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/motion"
	"archload/fem/vibration"
)

// Report is how a design vibrates: masses g, frequencies Hz, places mm.
type Report struct {
	Format   int         `json:"format"`
	Units    string      `json:"units"`
	Title    string      `json:"title"`
	State    string      `json:"state"`
	Nodes    int         `json:"nodes"`
	Bearing  int         `json:"bearing_points"` // of the foot that stay in contact; 0 but for strung
	Tones    []Tone      `json:"tones"`          // ascending
	Heard    []HeardTone `json:"heard"`
	Changes  []Change    `json:"changes"` // null if not asked for
	Like     []Likeness  `json:"like"`    // null for the first of several designs, and for one alone
	Counted  Counted     `json:"counted"`
	GoodTo   float64     `json:"good_to"` // Hz, up to which the triangles carry bending waves
	Cautions []string    `json:"cautions"`
}

// Tone is one tone.
type Tone struct {
	Hz        float64     `json:"hz"`
	Pattern   string      `json:"pattern"`    // in plain words
	ModalMass float64     `json:"modal_mass"` // g, at the place that moves most
	X         float64     `json:"x"`          // mm, that place in plan
	Y         float64     `json:"y"`
	Share     Share       `json:"share"`
	Bridge    *BridgeTone `json:"bridge"` // null without a bridge
	Error     answer.Num  `json:"error"`  // 1, estimated relative error by the mesh; null if not estimated
	Bound     float64     `json:"search"` // 1, bound of the relative error that the search leaves
}

// Share is how the movement (kinetic energy) is shared out, 1.
type Share struct {
	Plate  float64 `json:"plate"`
	Braces float64 `json:"braces"`
	Sides  float64 `json:"sides"` // with lining
	Bridge float64 `json:"bridge"`
	Masses float64 `json:"masses"` // what sits on the plate
}

// BridgeTone is how the bridge moves as a whole: shares of the squares of the movements of its foot's
// middle, and of its saddle or foot's end by turning; they sum to 1.
type BridgeTone struct {
	Pumps         float64 `json:"pumps"`          // up and down
	RocksToNut    float64 `json:"rocks_to_nut"`   // about the line of its foot
	RocksSideways float64 `json:"rocks_sideways"` // one end up, the other down
	SlidesAlong   float64 `json:"slides_along"`   // along the strings
	SlidesAcross  float64 `json:"slides_across"`
	Turns         float64 `json:"turns"` // about the upright
	Words         string  `json:"words"` // the greatest of them
}

// HeardTone is a tone of the case beside the computed one that it is taken for.
type HeardTone struct {
	Hz        float64    `json:"hz"`
	Pattern   string     `json:"pattern"`
	Tone      int        `json:"tone"`      // number of the computed one, from 1; 0: none near
	Deviation answer.Num `json:"deviation"` // 1, computed over heard less 1
}

// Counted is the proof that no tone is missing.
type Counted struct {
	Below  float64 `json:"below"`  // Hz
	Count  int     `json:"count"`  // tones below it; those listed, and the free motions
	Free   int     `json:"free"`   // motions without a tone, left out
	Growth float64 `json:"growth"` // of the factor that counts, 1
}

// Shapes are the movements behind a report, for pictures.
type Shapes struct {
	Moving *design.Moving
	Tones  *vibration.Tones
	Normal [][]float64 // of each tone: movement of the plate's nodes square to it, greatest 1
}

// MotionCautions stand wherever numbers of motion do.
func MotionCautions() []string {
	return []string{
		"no air: neither its weight on the top nor the body's own air tones are in these numbers",
		"back and neck are held still; what they add or take is not in these numbers",
	}
}

// FindTones finds the lowest tones of a case in a state. With the options' NoError the mesh's share
// of the error is not estimated. It is a fault to ask for tones beyond what the mesh carries.
func FindTones(ctx context.Context, c *cases.Case, state design.State, count int, o design.Options) (*Report, *Shapes, error) {
	m, err := design.Vibrating(ctx, c, state, o)
	if err != nil {
		return nil, nil, err
	}
	o.Say("tones")
	t, err := m.Tones(count)
	if err != nil {
		return nil, nil, err
	}
	good, err := m.Carries()
	if err != nil {
		return nil, nil, err
	}
	if n := len(t.List); n > 0 && t.List[min(n, count)-1].Hz > good {
		return nil, nil, c.Fault("mesh.size", "%d tones reach to %.0f Hz, beyond %.0f Hz, up to which the triangles carry the waves; want fewer tones, or smaller triangles",
			count, t.List[min(n, count)-1].Hz, good)
	}
	r := toneReport(m, t)
	r.GoodTo = good
	s := &Shapes{Moving: m, Tones: t}
	var shapes [][]float64
	for i := range t.List {
		shapes = append(shapes, t.List[i].Shape)
	}
	shares := m.Structure.Shares(shapes)
	for i := range t.List {
		w, square := normalMovement(m, t.List[i].Shape)
		s.Normal = append(s.Normal, w)
		r.Tones = append(r.Tones, toneOf(m, &t.List[i], patternOf(m, w, square)))
		r.Tones[i].Share = shareOf(shares[i])
	}
	if !o.NoError {
		if err := r.estimate(ctx, m, o); err != nil {
			return nil, nil, err
		}
	}
	r.hear(c.Tones)
	return r, s, nil
}

// toneReport is a report without its tones.
func toneReport(m *design.Moving, t *vibration.Tones) *Report {
	return &Report{Format: cases.Format, Units: "Hz, mm, g; shares of 1", Title: m.Case.Title, State: string(m.State),
		Nodes: len(m.Built.Model.Nodes), Bearing: m.Bearing, Tones: []Tone{}, Heard: []HeardTone{}, Cautions: MotionCautions(),
		Counted: Counted{Below: t.To, Count: t.Proof.Count, Free: t.Free, Growth: t.Proof.Growth}}
}

// estimate finds the tones on triangles twice as large; the error falls as the square of their
// size, so that a third of the difference is left. Tones are matched by their order.
func (r *Report) estimate(ctx context.Context, m *design.Moving, o design.Options) error {
	o.Say("error estimate")
	o.Progress = nil
	o.Refine = m.Refine / 2
	coarse, err := design.Vibrating(ctx, m.Case, m.State, o)
	if err != nil {
		return fmt.Errorf("coarser triangles for the error estimate: %w", err)
	}
	t, err := coarse.Tones(len(r.Tones))
	if err != nil {
		return fmt.Errorf("coarser triangles for the error estimate: %w", err)
	}
	for i := range r.Tones {
		if i < len(t.List) {
			r.Tones[i].Error = answer.Num(math.Abs(t.List[i].Hz/r.Tones[i].Hz-1) / 3)
		}
	}
	return nil
}

// toneOf describes one tone.
func toneOf(m *design.Moving, t *vibration.Tone, pattern string) Tone {
	node, most := m.Structure.Most(t.Shape)
	at := m.Structure.Node(node)
	out := Tone{Hz: t.Hz, Bound: t.Bound, Error: answer.None(), X: at[0], Y: at[1], ModalMass: 1 / (most * most) / tonnePerGram, Pattern: pattern}
	if m.State == design.Strung {
		out.Bridge = bridgeTone(m, t.Shape)
	}
	return out
}

// shareOf names the parts.
func shareOf(s vibration.Shares) Share {
	part := func(i int) float64 {
		if i < len(s.Parts) {
			return s.Parts[i]
		}
		return 0
	}
	return Share{Plate: part(int(design.PartPlate)), Braces: part(int(design.PartBraces)), Sides: part(int(design.PartRim)),
		Bridge: s.Body, Masses: s.Masses}
}

// tonnePerGram turns g into the tonne of mechanics.
const tonnePerGram = 1e-6

// bridgeTone describes the bridge's motion.
func bridgeTone(m *design.Moving, shape []float64) *BridgeTone {
	br := m.Case.Bridge
	foot := [3]float64{br.At[0], br.At[1], m.Built.Plate.Outer.At(br.At).Z}
	move, turn := m.Structure.BodyMotion(shape, foot)
	high, half := float64(br.SaddleHeight), 0.0
	for _, f := range br.Feet {
		half = max(half, math.Abs(float64(f.From)), math.Abs(float64(f.To)))
	}
	parts := [6]float64{move[2], turn[0] * high, turn[1] * half, move[1], move[0], turn[2] * half}
	sum := 0.0
	for i, v := range parts {
		parts[i] = v * v
		sum += parts[i]
	}
	words := [6]string{"pumps", "rocks toward the nut", "rocks sideways", "slides along", "slides across", "turns"}
	best := 0
	for i := range parts {
		if sum > 0 {
			parts[i] /= sum
		}
		if parts[i] > parts[best] {
			best = i
		}
	}
	return &BridgeTone{parts[0], parts[1], parts[2], parts[3], parts[4], parts[5], words[best]}
}

// hear sets each heard tone beside the nearest computed one that is not taken yet, in the order of
// the case; one that shows the pattern heard counts as nearer. What is farther than a fifth of its
// frequency from all is taken for none.
func (r *Report) hear(heard []motion.HeardTone) {
	for _, h := range heard {
		out := HeardTone{Hz: float64(h.Hz), Pattern: h.Pattern, Deviation: answer.None()}
		best := 0.2
		for i := range r.Tones {
			d := math.Abs(r.Tones[i].Hz/out.Hz - 1)
			if h.Pattern != "" && h.Pattern == r.Tones[i].Pattern {
				d /= patternWeight
			}
			if d < best && !r.taken(i+1) {
				best, out.Tone, out.Deviation = d, i+1, answer.Num(r.Tones[i].Hz/out.Hz-1)
			}
		}
		r.Heard = append(r.Heard, out)
	}
}

// patternWeight is how many times nearer a tone counts whose pattern is the one heard.
const patternWeight = 4

// taken says whether a computed tone is spoken for.
func (r *Report) taken(n int) bool {
	for _, h := range r.Heard {
		if h.Tone == n {
			return true
		}
	}
	return false
}

package tone

import (
	"context"
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vibration"
)

// leftOut says in a few words what is not in numbers of motion.
func leftOut(m *design.Moving) string {
	switch {
	case m.Built.Back != nil:
		return "no air, no neck"
	case m.State == design.Free:
		return "no air"
	}
	return "no air, back and neck held still"
}

// cautions stand wherever numbers of motion do.
func cautions(m *design.Moving) []string {
	out := []string{"no air: neither its weight on the top nor the body's own air tones are in these numbers"}
	switch {
	case m.Built.Back != nil:
		out = append(out, "no neck: what it adds or takes is not in these numbers")
	case m.State != design.Free:
		out = append(out, "back and neck are held still; what they add or take is not in these numbers")
	}
	return out
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
		one := toneOf(m, &t.List[i])
		one.Pattern, one.lines = patternOf(m, w, square)
		r.Tones = append(r.Tones, one)
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
		Nodes: len(m.Built.Model.Nodes), Bearing: m.Bearing, Tones: []Tone{}, Heard: []HeardTone{}, Cautions: cautions(m), LeftOut: leftOut(m),
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
func toneOf(m *design.Moving, t *vibration.Tone) Tone {
	node, most := m.Structure.Most(t.Shape)
	at := m.Structure.Node(node)
	out := Tone{Hz: t.Hz, Bound: t.Bound, Error: answer.None(), X: at[0], Y: at[1], ModalMass: 1 / (most * most) / tonnePerGram}
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
	return Share{Plate: part(int(design.PartPlate)), Braces: part(int(design.PartBraces)), Sides: part(int(design.PartRim)), Back: part(int(design.PartBack)),
		Bridge: s.Body, Masses: s.Masses}
}

// tonnePerGram turns g into the tonne of mechanics.
const tonnePerGram = 1e-6

// Words of two of the bridge's motions.
const (
	pumps         = "pumps"
	rocksSideways = "rocks sideways"
)

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
	words := [6]string{pumps, "rocks toward the nut", rocksSideways, "slides along", "slides across", "turns"}
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

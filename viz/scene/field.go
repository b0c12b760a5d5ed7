package scene

import (
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/mesh"
	"archload/viz/figure"
	"archload/viz/scale"
)

// Field is a quantity that colours the scene.
type Field uint8

// The fields.
const (
	Wood         Field = iota // none: the parts in the colours of their wood
	Sink                      // of the outer surface
	StressAlong               // the grain, at one face
	StressAcross              // the grain, at one face
	StrengthUsed              // at the worse face
	LoadFlow                  // vertical force through plate and braces
	FootPressure              // under the bridge
	RemainingGap              // under the bridge
	Tone                      // how far the plate swings square to itself
	Humidity                  // how far the outer surface goes down as the air changes
)

// Face is a surface of the plate.
type Face uint8

// The faces of the plate.
const (
	Outer Face = iota
	Inner
)

// about is what is known of a field before any solution.
type about struct {
	word   string // by which lessons, files and commands ask for it
	name   string // in the maker's words
	short  string // on a button
	unit   string
	words  string // what it shows, in a line or two
	kind   scale.Kind
	faces  bool // it differs between the faces of the plate
	onFoot bool // it lies on the bridge's foot instead of the plate
}

// fields is the table of the fields. A new one is a constant above, a row here
// and its values below; buttons, keys, help and lessons read from it.
func fields() []about {
	return []about{
		Wood: {word: "none", name: "wood", short: "Wood", words: "The parts as they are carved."},
		Sink: {word: "sink", name: "sink", short: "Sink", unit: "mm", kind: scale.Sinking,
			words: "How far the outer surface has gone down. Between two lines lies one step of the legend."},
		StressAlong: {word: "stress along", name: "stress along the grain", short: "Stress along", unit: "MPa", kind: scale.Signed, faces: true,
			words: "Pull (brown) and push (blue) along the grain at the face shown."},
		StressAcross: {word: "stress across", name: "stress across the grain", short: "Stress across", unit: "MPa", kind: scale.Signed, faces: true,
			words: "Pull (brown) and push (blue) across the grain at the face shown, where spruce is weakest."},
		StrengthUsed: {word: "strength used", name: "strength used", short: "Strength", unit: "%",
			words: "Share of the wood's strength that is used at the worse face: 100 is where it may crack at once."},
		LoadFlow: {word: "load flow", name: "load flow", short: "Load flow", unit: "N/mm",
			words: "Force that goes through each millimetre of plate and braces on its way from the bridge to the rim."},
		FootPressure: {word: "foot pressure", name: "foot pressure", short: "Pressure", unit: "MPa", onFoot: true,
			words: "How hard each place of the bridge's foot presses on the top; bare where it does not touch."},
		RemainingGap: {word: "gap", name: "remaining gap", short: "Gap", unit: "mm", onFoot: true,
			words: "Air that is left between the foot and the top; bare where they touch."},
		Tone: {word: "tone", name: "swing of a tone", short: "Tones", kind: scale.Signed,
			words: "How the top swings in one of its tones: parts of one colour go together, the bold lines between them stay still, where sand would gather."},
		Humidity: {word: "humidity", name: "movement by humidity", short: "Humidity", unit: "mm", kind: scale.Sinking,
			words: "How far the outer surface goes down (green to blue) or comes up (brown) from the air that it was made in to drier or damper air, the strings on."},
	}
}

// Fields lists the fields in the order of a menu.
func Fields() []Field {
	out := make([]Field, len(fields()))
	for i := range out {
		out[i] = Field(i)
	}
	return out
}

// Word is the word by which lessons, files and commands ask for the field.
func (f Field) Word() string { return fields()[f].word }

// Name returns the field in the maker's words.
func (f Field) Name() string { return fields()[f].name }

// Short returns the field's word on a button.
func (f Field) Short() string { return fields()[f].short }

// Unit returns the field's unit; "" for none.
func (f Field) Unit() string { return fields()[f].unit }

// Words explains the field in a line or two.
func (f Field) Words() string { return fields()[f].words }

// HasFaces tells whether the field differs between the faces of the plate.
func (f Field) HasFaces() bool { return fields()[f].faces }

// OnFoot tells whether the field lies on the bridge's foot instead of the
// plate.
func (f Field) OnFoot() bool { return fields()[f].onFoot }

// Values returns a field of the plate at its nodes, in the field's unit; nil
// if it does not lie on the plate or is not known. Fields of the triangles
// are the means about each node, weighted by area. LoadFlow needs
// Solution.Flow.
func Values(s *design.Solution, f Field, face Face) []float64 {
	top := plateFields{s.Top.Built.Mesh.Plan, answer.SinkField, answer.StressFields,
		func(s *design.Solution) []float64 { used, _ := answer.StrengthFields(s); return used }}
	if f == LoadFlow {
		return top.means(answer.FlowField(s))
	}
	return top.values(s, f, face)
}

// plateFields are the fields that top and back both have.
type plateFields struct {
	plan     *mesh.Plan
	sink     func(*design.Solution) []float64
	stress   func(s *design.Solution, zeta float64) (along, across []float64)
	strength func(*design.Solution) []float64
}

// values returns a field at the plate's nodes; nil if it is none of both plates or not known.
func (p plateFields) values(s *design.Solution, f Field, face Face) []float64 {
	zeta := 1.0
	if face == Inner {
		zeta = -1
	}
	switch f {
	case Sink, Humidity:
		return p.sink(s)
	case StressAlong:
		along, _ := p.stress(s, zeta)
		return p.means(along)
	case StressAcross:
		_, across := p.stress(s, zeta)
		return p.means(across)
	case StrengthUsed:
		return p.means(p.strength(s))
	}
	return nil
}

// means takes a field of the triangles to the nodes; nil stays nil.
func (p plateFields) means(per []float64) []float64 {
	if per == nil {
		return nil
	}
	return figure.NodeMeans(p.plan, per)
}

// ClosedGap is the gap below which a foot counts as closed, mm: what the numbers show as none.
const ClosedGap = 0.0005

// FootValues returns a field of the foot at the cells of Solution.FootCells,
// NaN where there is nothing: no pressure, or no gap. It is nil for other
// fields and without a bridge.
func FootValues(s *design.Solution, f Field) []float64 {
	var out []float64
	none := 0.0
	switch f {
	case FootPressure:
		for _, c := range answer.FootCells(s) {
			out = append(out, c.Pressure)
		}
	case RemainingGap:
		out, none = s.FootGaps(), ClosedGap
	}
	for i, v := range out {
		if !(v > none) {
			out[i] = math.NaN()
		}
	}
	return out
}

// flowShare is the share of the plate's area whose values the legend of the
// load flow covers; the few beyond, under the foot, take its end colour.
const flowShare = 0.98

// Range returns the ends of the legend for the values of a field, in its unit.
// It is what designs side by side share: join their ranges and hand the
// result to Show.
func Range(s *design.Solution, f Field, values []float64) [2]float64 {
	lo, hi, ok := figure.Field{Nodal: values}.Extent()
	if !ok {
		return [2]float64{}
	}
	if f == LoadFlow {
		hi = figure.Quantile(s.Top.Built.Mesh.Plan, answer.FlowField(s), flowShare)
	}
	if f.kind() == scale.Counting {
		lo = 0
	}
	return [2]float64{lo, math.Max(hi, lo)}
}

// kind says what the field's colours mean.
func (f Field) kind() scale.Kind { return fields()[f].kind }

// scaleOf returns the legend's scale of a range.
func (f Field) scaleOf(r [2]float64) scale.Scale {
	if f.kind() == scale.Counting {
		r[0] = math.Max(0, r[0])
	}
	return scale.New(r[0], r[1], f.kind())
}

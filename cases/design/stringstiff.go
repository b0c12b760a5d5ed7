package design

import (
	"math"

	"archload/cases"
	"archload/cases/gauge"
	"archload/cases/tree"
)

// steelModulus is Young's modulus of plain carbon steel strings, MPa (handbook value, from
// memory).
const steelModulus = 2e5

// coreShare is the share of a wound string's mass that its core is taken to have when the case
// does not say: round cores of bronze-wound sets have 0.2 to 0.4 of it (common practice, no published
// source).
const coreShare = 0.3

// StringSpan is one string as a spring at the saddle.
type StringSpan struct {
	Force       cases.StringForce
	Front, Back float64 // mm, lengths before and behind the saddle
	EA          float64 // N, of what carries the tension
	Mass        float64 // kg/m
	CoreGuessed bool    // EA rests on a share of the mass
}

// usualAfterlength is the length behind the saddle when the strings' path is not given, as a share of
// the speaking length (common practice, no published source).
const usualAfterlength = 0.2

// StringSpans returns the strings as springs at the saddle; top as in StringForces. A string whose
// mass is not known from its note, diameter or unit weight is taken for plain steel stressed to
// usualStress.
func StringSpans(c *cases.Case, top float64) []StringSpan {
	var out []StringSpan
	for i, f := range c.StringForces(top) {
		s := StringSpan{Force: f, Front: speaking(c, i)}
		s.Back = usualAfterlength * s.Front
		if p := c.Strings.Path; p != nil {
			s.Back = math.Hypot(float64(p.AnchorDistance), top+f.Height-float64(p.AnchorHeight))
		}
		s.EA, s.Mass, s.CoreGuessed = stretch(c, i, f.Tension)
		out = append(out, s)
	}
	return out
}

// usualScale is the speaking length of a string that is given by its tension alone, mm.
const usualScale = 640

// speaking is the speaking length of string i, mm.
func speaking(c *cases.Case, i int) float64 {
	if l := float64(c.Strings.ScaleOf(i)); l > 0 {
		return l
	}
	return usualScale
}

// usualStress is the stress of a plain steel string in tune, MPa (common practice, no published
// source): it stands in where the case gives a tension alone.
const usualStress = 1200

// stretch returns EA, N, and mass per length, kg/m, of string i.
func stretch(c *cases.Case, i int, tension float64) (ea, mass float64, guessed bool) {
	e := &c.Strings.Each[i]
	area := func(d tree.Length) float64 { return math.Pi / 4 * float64(d) * float64(d) }
	switch {
	case e.Plain > 0:
		return steelModulus * area(e.Plain), float64(gauge.PlainWeight(e.Plain, gauge.SteelDensity)), false
	case e.Wound > 0 || e.UnitWeight > 0:
		mu, _ := c.Strings.UnitWeightOf(i)
		mass = float64(mu)
	case e.Note.Freq > 0 && c.Strings.ScaleOf(i) > 0:
		v := 2 * float64(c.Strings.ScaleOf(i)) / 1000 * float64(e.Note.Freq)
		mass = tension / (v * v)
	default:
		a := tension / usualStress
		if e.Core > 0 {
			a = area(e.Core)
		}
		return steelModulus * a, gauge.SteelDensity * a * 1e-6, e.Core == 0
	}
	if e.Core > 0 {
		return steelModulus * area(e.Core), mass, false
	}
	return steelModulus * coreShare * mass / gauge.SteelDensity * 1e6, mass, true
}

package tree

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Length is a length, mm, that may be written "0.5 in" in a case file.
type Length float64

// Force is a force, N, that may be written "11 lb"; a mass ("2 kg") stands for
// its weight under standard gravity, 9.80665 m/s².
type Force float64

// Angle is an angle, degrees, that may be written "0.1 rad".
type Angle float64

// Stress is a modulus or a strength, MPa, that may be written "11.5 GPa".
type Stress float64

// Density is a mass per volume, kg/m³, that may be written "0.41 g/cm3".
type Density float64

// Mass is a mass, g, that may be written "1 oz".
type Mass float64

// LineMass is a mass per length of string, kg/m (the same number as g/mm),
// that may be written "4.9e-4 lb/in".
type LineMass float64

// Stiffness is a spring's force per travel, N/mm, that may be written "20 lb/in".
type Stiffness float64

// Frequency is a frequency, Hz.
type Frequency float64

// Conversion factors, exact by definition (international yard and pound
// agreement of 1959; standard gravity of the 3rd CGPM, 1901).
const (
	Inch    = 25.4                          // mm
	gravity = 9.80665                       // m/s²
	pound   = 0.45359237                    // kg
	psi     = pound * gravity / Inch / Inch // MPa
)

// unit is one way to write a quantity and its size in the case file's own unit.
type unit struct {
	name   string
	factor float64
}

// Dimension says how a quantity is written; units[0] is the unit of a bare
// number. Values beyond the limit (in that unit) are refused as nonsense.
type Dimension struct {
	name    string
	example string
	limit   float64
	units   []unit // named in messages
	also    []unit // understood, not named
}

// PlainNumber is the dimension of a number without unit.
func PlainNumber() Dimension { return Dimension{name: "a number", limit: 1e9} }

// DimensionOf returns the dimension of a case file's quantity type.
func DimensionOf(v any) (Dimension, bool) {
	switch v.(type) {
	case Length:
		return Dimension{"a length", `"0.5 in"`, 1e4, []unit{{"mm", 1}, {"cm", 10}, {"m", 1000}, {"in", Inch}, {"inch", Inch}, {"ft", 12 * Inch}},
			[]unit{{"inches", Inch}, {`"`, Inch}, {"″", Inch}, {"thou", Inch / 1000}}}, true
	case Force:
		return Dimension{"a force", `"11 lb"`, 1e5, []unit{{"N", 1}, {"kN", 1000}, {"lb", pound * gravity}, {"lbf", pound * gravity},
			{"kg", gravity}, {"kgf", gravity}, {"g", gravity / 1000}}, []unit{{"lbs", pound * gravity}}}, true
	case Angle:
		return Dimension{"an angle", `"5 deg"`, 360, []unit{{"deg", 1}, {"°", 1}, {"rad", 180 / math.Pi}}, nil}, true
	case Stress:
		return Dimension{"a stress", `"11.5 GPa"`, 1e6, []unit{{"MPa", 1}, {"N/mm2", 1}, {"GPa", 1000}, {"kPa", 1e-3}, {"psi", psi}}, nil}, true
	case Density:
		return Dimension{"a density", `"0.41 g/cm3"`, 3e4, []unit{{"kg/m3", 1}, {"g/cm3", 1000}, {"lb/ft3", pound / math.Pow(12*Inch/1000, 3)}}, nil}, true
	case Mass:
		return Dimension{"a mass", `"1 oz"`, 1e5, []unit{{"g", 1}, {"kg", 1000}, {"oz", pound * 1000 / 16}, {"lb", pound * 1000}}, nil}, true
	case LineMass:
		return Dimension{"a mass per length", `"4.9e-4 lb/in"`, 1, []unit{{"kg/m", 1}, {"g/mm", 1}, {"g/m", 1e-3}, {"lb/in", pound / Inch * 1000}}, nil}, true
	case Stiffness:
		return Dimension{"a stiffness", `"20 lb/in"`, 1e9, []unit{{"N/mm", 1}, {"N/m", 1e-3}, {"lb/in", pound * gravity / Inch}}, nil}, true
	case Frequency:
		return Dimension{"a frequency", `"440 Hz"`, 1e5, []unit{{"Hz", 1}, {"kHz", 1000}}, nil}, true
	case float64:
		return PlainNumber(), true
	}
	return Dimension{}, false
}

// Base is the unit of a bare number, "" for a plain number.
func (d Dimension) Base() string {
	if len(d.units) == 0 {
		return ""
	}
	return d.units[0].name
}

// Wanted describes what belongs in the key.
func (d Dimension) Wanted() string {
	if len(d.units) == 0 {
		return "a number"
	}
	return fmt.Sprintf("%s in %s, or with its unit as in %s", d.name, d.Base(), d.example)
}

// Factor returns the size of the named unit in base units.
func (d Dimension) Factor(name string) (float64, bool) {
	for _, u := range slices.Concat(d.units, d.also) {
		if u.name == name {
			return u.factor, true
		}
	}
	return 0, false
}

// unitNames lists the admissible units.
func (d Dimension) unitNames() string {
	names := make([]string, len(d.units))
	for i, u := range d.units {
		names[i] = u.name
	}
	return strings.Join(names, ", ")
}

// Number checks a bare number.
func (d Dimension) Number(x float64) (float64, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, fmt.Errorf("want %s, found %v", d.Wanted(), x)
	}
	if math.Abs(x) > d.limit {
		return 0, fmt.Errorf("want at most %s, found %v", WithUnit(d.limit, d.Base()), x)
	}
	return x, nil
}

// Parse reads a number with its unit, as in "0.012 in" or "25 1/2 in". A
// decimal comma is refused: "1,500 mm" may be meant either way.
func (d Dimension) Parse(s string) (float64, error) {
	s = strings.TrimSpace(s)
	m := writtenNumber.FindStringSubmatch(s)
	if m == nil {
		return 0, fmt.Errorf("want %s, found %q", d.Wanted(), s)
	}
	x, err := writtenValue(m)
	if err != nil {
		return 0, fmt.Errorf("want %s, found %q", d.Wanted(), s)
	}
	name := strings.TrimSpace(s[len(m[0]):])
	if strings.HasPrefix(name, ",") {
		return 0, fmt.Errorf("want %s with a decimal point, not a comma, found %q", d.name, s)
	}
	if name == "" {
		return d.Number(x)
	}
	f, ok := d.Factor(name)
	if !ok && len(d.units) == 0 {
		return 0, fmt.Errorf("want a number without unit, found %q", s)
	}
	if !ok {
		return 0, fmt.Errorf("want %s in one of %s, found %q", d.name, d.unitNames(), s)
	}
	return d.Number(x * f)
}

// writtenNumber matches a decimal number, or a fraction with or without whole
// ones before it: sign, whole, above, below, decimal.
var writtenNumber = regexp.MustCompile(`^([-+]?)(?:(?:(\d+)[ -])?(\d+)/(\d+)|(\d*\.?\d*(?:[eE][-+]?\d+)?))`)

// writtenValue is the number of a match of writtenNumber.
func writtenValue(m []string) (float64, error) {
	if m[4] == "" {
		return strconv.ParseFloat(m[1]+m[5], 64)
	}
	above, below := tagNumber(m[3]), tagNumber(m[4])
	x := above / below
	if m[2] != "" {
		x += tagNumber(m[2])
	}
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return 0, errors.New("a fraction of nothing")
	}
	if m[1] == "-" {
		x = -x
	}
	return x, nil
}

// WithUnit writes a number and its unit, if any: exactly if that is short, as
// typed numbers are, else to seven digits, as befits converted ones.
func WithUnit(x float64, unit string) string {
	text := strconv.FormatFloat(x, 'g', -1, 64)
	if len(text) > 9 {
		text = strconv.FormatFloat(x, 'g', 7, 64)
	}
	return strings.TrimSpace(text + " " + unit)
}

// inRange checks x against a want tag: ">0", ">=0" or "lo..hi". The tags are
// part of the program; a malformed one is a programmer's error and panics.
func (d Dimension) inRange(x float64, want string) error {
	var ok bool
	var text string
	if lo, hi, isSpan := strings.Cut(want, ".."); isSpan {
		ok = x >= tagNumber(lo) && x <= tagNumber(hi)
		text = lo + " to " + hi
	} else if bound, isLeast := strings.CutPrefix(want, ">="); isLeast {
		ok = x >= tagNumber(bound)
		text = ">= " + bound
	} else {
		bound := strings.TrimPrefix(want, ">")
		ok = x > tagNumber(bound)
		text = "> " + bound
	}
	if ok {
		return nil
	}
	return fmt.Errorf("want %s, found %s", strings.TrimSpace(text+" "+d.Base()), strconv.FormatFloat(x, 'g', -1, 64))
}

// tagNumber reads a number of a struct tag.
func tagNumber(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("cases: malformed want tag: " + s)
	}
	return x
}

// WantFound is the message for a value that does not fit.
func WantFound(want string, found float64) error {
	return fmt.Errorf("want %s, found %s", want, WithUnit(found, ""))
}

// PaperUnit returns the size of a unit of printed pages, mm: those that have a
// physical size (a point is 1/72 in, a pica 1/6 in).
func PaperUnit(name string) (mm float64, ok bool) {
	switch name {
	case "mm":
		return 1, true
	case "cm":
		return 10, true
	case "in":
		return Inch, true
	case "pt":
		return Inch / 72, true
	case "pc":
		return Inch / 6, true
	}
	return 0, false
}

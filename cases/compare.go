package cases

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
)

// Comparison sets designs side by side.
type Comparison struct {
	Format  int       `json:"format"`
	Units   string    `json:"units"`
	Cases   []string  `json:"cases"`
	Titles  []string  `json:"titles"`
	Differs []KeyDiff `json:"differs"` // in the input
	Rows    []Row     `json:"rows"`
	Reports []*Report `json:"reports"`
}

// KeyDiff is one key of the input with its value in each case.
type KeyDiff struct {
	Key    string   `json:"key"`
	Values []string `json:"values"`
}

// Row is one number in each case.
type Row struct {
	Name   string `json:"name"`
	Unit   string `json:"unit"`
	Values []Num  `json:"values"`
	digits int
}

// Compare sets solved cases side by side. names are what the user called them.
func Compare(names []string, sols []*Solution, reps []*Report) *Comparison {
	c := &Comparison{Format: format, Units: unitsNote, Cases: names, Reports: reps, Differs: differs(sols)}
	for _, r := range reps {
		c.Titles = append(c.Titles, r.Title)
	}
	for _, h := range headlines() {
		row := Row{Name: h.name, Unit: h.unit, digits: h.digits}
		known := false
		for _, r := range reps {
			v := h.get(r)
			known = known || v.Known()
			row.Values = append(row.Values, v)
		}
		if known {
			c.Rows = append(c.Rows, row)
		}
	}
	return c
}

// differs lists the resolved keys whose values are not the same in all cases.
func differs(sols []*Solution) []KeyDiff {
	cs := make([]*Case, len(sols))
	for i, s := range sols {
		cs[i] = s.Case
	}
	return keyDiffs(cs)
}

func keyDiffs(cs []*Case) []KeyDiff {
	var keys []string
	values := make([]map[string]string, len(cs))
	for i, c := range cs {
		values[i] = map[string]string{}
		for _, kv := range Resolved(c) {
			if !slices.Contains(keys, kv.Key) {
				keys = append(keys, kv.Key)
			}
			values[i][kv.Key] = kv.Value
		}
	}
	out := []KeyDiff{}
	for _, k := range keys {
		if k == "title" || k == "base" {
			continue
		}
		d := KeyDiff{Key: k}
		same := true
		for i := range cs {
			v, ok := values[i][k]
			if !ok {
				v = "-"
			}
			d.Values = append(d.Values, v)
			same = same && v == d.Values[0]
		}
		if !same {
			out = append(out, d)
		}
	}
	return out
}

// headline is one number that a comparison shows.
type headline struct {
	name, unit string
	digits     int
	get        func(*Report) Num
}

func ofBridge(get func(*BridgeReport) Num) func(*Report) Num {
	return func(r *Report) Num {
		if r.Bridge == nil {
			return None()
		}
		return get(r.Bridge)
	}
}

func headlines() []headline {
	part := func(get func(*EnergyReport) float64) func(*Report) Num {
		return func(r *Report) Num { return Num(100 * get(&r.Energy) / r.Energy.Total) }
	}
	return []headline{
		{"bridge sinks", "mm", 3, ofBridge(func(b *BridgeReport) Num { return Num(b.Sink) })},
		{"bass end of the bridge sinks", "mm", 3, ofBridge(func(b *BridgeReport) Num { return Num(b.EndSink[0]) })},
		{"treble end of the bridge sinks", "mm", 3, ofBridge(func(b *BridgeReport) Num { return Num(b.EndSink[1]) })},
		{"bridge leans toward the neck", "deg", 3, ofBridge(func(b *BridgeReport) Num { return Num(b.Tilt.ForeAft) })},
		{"bridge leans to the treble", "deg", 3, ofBridge(func(b *BridgeReport) Num { return Num(b.Tilt.Sideways) })},
		{"strings lower at the octave", "mm", 3, ofBridge(func(b *BridgeReport) Num { return Num(b.ActionChange) })},
		{"top sinks most", "mm", 3, func(r *Report) Num { return Num(r.Top.MostSunk.Value) }},
		{"apex sinks", "mm", 3, func(r *Report) Num { return r.Top.ApexSink }},
		{"foot: bass end carries", "%", 1, ofBridge(func(b *BridgeReport) Num { return Num(100 * b.Share.BassEnd) })},
		{"foot: middle carries", "%", 1, ofBridge(func(b *BridgeReport) Num { return Num(100 * b.Share.Middle) })},
		{"foot: treble end carries", "%", 1, ofBridge(func(b *BridgeReport) Num { return Num(100 * b.Share.TrebleEnd) })},
		{"foot: middle touches at", "% of load", 0, ofBridge(func(b *BridgeReport) Num { return 100 * b.MiddleTouchesAt })},
		{"foot: middle has closed at", "% of load", 0, ofBridge(func(b *BridgeReport) Num { return 100 * b.MiddleClosesAt })},
		{"friction needed", "1", 3, ofBridge(func(b *BridgeReport) Num { return b.FrictionNeeded })},
		{"edge holds up: neck", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Neck) }},
		{"edge holds up: tail", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Tail) }},
		{"edge holds up: bass side", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Bass) }},
		{"edge holds up: treble side", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Treble) }},
		{"energy in all", "N mm", 2, func(r *Report) Num { return Num(r.Energy.Total) }},
		{"of it stretching", "%", 1, part(func(e *EnergyReport) float64 { return e.Membrane })},
		{"of it bending", "%", 1, part(func(e *EnergyReport) float64 { return e.Bending })},
		{"of it in the braces", "%", 1, part(func(e *EnergyReport) float64 { return e.Braces })},
		{"strength used", "%", 0, func(r *Report) Num { return 100 * r.Strength.Used }},
		{"crushing under the foot", "%", 0, func(r *Report) Num { return 100 * r.Strength.FootUsed }},
		{"mass of plate and braces", "g", 1, func(r *Report) Num { return Num(r.Mass.Plate + r.Mass.Braces) }},
		{"error from the mesh", "%", 2, func(r *Report) Num { return 100 * r.Error.Discretisation }},
	}
}

// Write prints the comparison as text.
func (c *Comparison) Write(w io.Writer) error {
	var b strings.Builder
	for i, n := range c.Cases {
		fmt.Fprintf(&b, "%c  %s: %s\n", 'A'+i, n, c.Titles[i])
	}
	b.WriteString("\nWhat differs in the input\n")
	for _, d := range c.Differs {
		fmt.Fprintf(&b, "  %s\n", d.Key)
		for i, v := range d.Values {
			fmt.Fprintf(&b, "      %c  %s\n", 'A'+i, v)
		}
	}
	if len(c.Differs) == 0 {
		b.WriteString("  nothing\n")
	}
	b.WriteString("\nWhat comes of it (below the first: the difference from A)\n")
	fmt.Fprintf(&b, "  %-32s", "")
	for i := range c.Cases {
		fmt.Fprintf(&b, " %10c", 'A'+i)
	}
	b.WriteString("  unit\n")
	for _, r := range c.Rows {
		r.write(&b)
	}
	b.WriteString("\nA difference smaller than the scatter of wood (stiffness 22 % from board to board) shows only\n" +
		"between tops of the same billet. The maker's judgement comes first.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

func (r *Row) write(b *strings.Builder) {
	fmt.Fprintf(b, "  %-32s", r.Name)
	for _, v := range r.Values {
		fmt.Fprintf(b, " %10s", r.number(v))
	}
	fmt.Fprintf(b, "  %s\n  %-32s %10s", r.Unit, "", "")
	for _, v := range r.Values[1:] {
		fmt.Fprintf(b, " %10s", r.difference(v))
	}
	b.WriteByte('\n')
}

func (r *Row) number(v Num) string {
	if !v.Known() {
		return "never"
	}
	return plainZeros(fmt.Sprintf("%.*f", r.digits, float64(v)))
}

func (r *Row) difference(v Num) string {
	d := float64(v - r.Values[0])
	if math.IsNaN(d) {
		return ""
	}
	s := fmt.Sprintf("%+.*f", r.digits, d)
	if strings.Trim(s, "+-0.") == "" {
		return "="
	}
	return s
}

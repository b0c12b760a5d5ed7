package cases

import (
	"fmt"
	"io"
	"math"
)

// Overview is what can be said of a case without solving it.
type Overview struct {
	Format   int            `json:"format"`
	Units    string         `json:"units"`
	Title    string         `json:"title"`
	Keys     []Setting      `json:"keys"`
	Mass     MassReport     `json:"mass"`
	Top      TopReport      `json:"top"`
	Strings  *StringsReport `json:"strings"`
	Nodes    int            `json:"nodes"`
	Memory   float64        `json:"memory_mb"` // about, MB
	Work     float64        `json:"gigaflop"`  // about, of the factorisation
	Warnings []string       `json:"warnings"`
}

// Look checks a case as far as it can be checked without solving, and
// estimates what a solve costs.
func Look(c *Case) (*Overview, error) {
	g, err := newShape(c, Options{})
	if err != nil {
		return nil, err
	}
	p := &Top{notes: g.notes}
	if err := g.mesh(p, 1); err != nil {
		return nil, err
	}
	s := &Solution{Top: p}
	e := p.Built.Plate.Extremes(p.Built.Mesh)
	o := &Overview{Format: format, Units: unitsNote, Title: c.Title, Keys: Resolved(c), Mass: s.masses(),
		Top: TopReport{Thinnest: spotOf(e.Thinnest), Thickest: spotOf(e.Thickest), Steepest: spotOf(e.Steepest),
			Apex: p.Built.apex(e.Highest), ApexSink: None()},
		Strings: c.stringsReport(), Nodes: len(p.Built.Model.Nodes), Warnings: p.warnings()}
	// Fill and work of nested dissection on a plate, fitted to measured
	// factors of 2 000 to 50 000 nodes.
	n := float64(o.Nodes)
	entries := 6 * 28 * n * math.Log2(math.Max(2, n/2))
	o.Memory = 8 * entries * 1.6 / 1e6
	o.Work = 3.5 * math.Pow(n/1e4, 1.5)
	return o, nil
}

// warnings lists what deserves a second look.
func (b *Top) warnings() []string {
	out := []string{}
	for _, w := range b.notes.Warnings {
		out = append(out, w.Error())
	}
	for _, w := range b.Built.Case.Warnings() {
		out = append(out, w.Error())
	}
	return out
}

// Write prints the overview as text.
func (o *Overview) Write(w io.Writer) error {
	fmt.Fprintf(w, "%s\n\nThe design as it will be computed (defaults filled in)\n", o.Title)
	for _, kv := range o.Keys {
		fmt.Fprintf(w, "  %-30s %s\n", kv.Key, kv.Value)
	}
	fmt.Fprintf(w, "\nThe top\n")
	fmt.Fprintf(w, "  plate %.0f g, braces %.1f g", o.Mass.Plate, o.Mass.Braces)
	if o.Mass.Bridge.Known() {
		fmt.Fprintf(w, ", bridge %.1f g", float64(o.Mass.Bridge))
	}
	fmt.Fprintf(w, "\n  apex %.1f mm high at (%.0f, %.0f); thickness %.1f to %.1f mm; steepest slope %.1f degrees\n", o.Top.Apex.Value,
		o.Top.Apex.X, o.Top.Apex.Y, o.Top.Thinnest.Value, o.Top.Thickest.Value, o.Top.Steepest.Value)
	if s := o.Strings; s != nil {
		fmt.Fprintf(w, "\nThe strings: %.0f N of tension press down with %.1f N and push %.1f N toward the %s\n", s.Tension, s.Downforce,
			math.Abs(s.Along), ends(s.Along, "neck", "tail"))
	}
	fmt.Fprintf(w, "\nA solve has %d nodes, about %.0f MB and %.1f thousand million operations to factorise\n", o.Nodes, o.Memory, o.Work)
	for _, s := range o.Warnings {
		fmt.Fprintf(w, "warning: %s\n", s)
	}
	_, err := fmt.Fprintln(w, "the case is sound")
	return err
}

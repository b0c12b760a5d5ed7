package main

import (
	"io"
	"strconv"

	"archload/cases/answer"
	"archload/cases/pull"

	"archload/cmd/internal/spreadsheet"
)

// table is one CSV file: column names that end in their unit, then rows.
type table struct {
	name string
	head []string
	rows [][]string
}

// tableFiles lists the tables of one solved case; those with nothing in them
// are left out.
func tableFiles(stem string, rep *answer.Report) []output {
	tables := []table{gaugeTable(rep.Gauges), braceTable(rep.Braces)}
	if rep.Strings != nil {
		tables = append(tables, stringTable(rep.Strings))
	}
	if rep.Bridge != nil {
		tables = append(tables, contactTable(rep.Bridge), loadTable(rep.Bridge))
	}
	var out []output
	for _, t := range tables {
		if len(t.rows) > 0 {
			out = append(out, output{stem + "-" + t.name, []string{"csv"}, t.write})
		}
	}
	return out
}

func (t table) write(w io.Writer, _ string) error {
	return spreadsheet.Write(w, append([][]string{t.head}, t.rows...)...)
}

// row is a name and numbers as they are written; a number that cannot be had
// is an empty cell.
func row(name []string, values ...float64) []string {
	out := name
	for _, v := range values {
		cell := ""
		if answer.Num(v).Known() {
			cell = strconv.FormatFloat(v, 'g', 8, 64)
		}
		out = append(out, cell)
	}
	return out
}

func gaugeTable(gauges []answer.GaugeReport) table {
	t := table{name: "gauges", head: []string{"name", "x_mm", "y_mm", "sink_mm", "measured_mm",
		"outer_along_MPa", "outer_across_MPa", "outer_shear_MPa", "inner_along_MPa", "inner_across_MPa", "inner_shear_MPa"}}
	for _, g := range gauges {
		t.rows = append(t.rows, row([]string{g.Name}, g.X, g.Y, g.Sink, float64(g.Measured),
			g.Outer.Along, g.Outer.Across, g.Outer.Shear, g.Inner.Along, g.Inner.Across, g.Inner.Shear))
	}
	return t
}

func braceTable(braces []answer.BraceReport) table {
	t := table{name: "braces", head: []string{"name", "mass_g", "axial_N", "axial_x_mm", "axial_y_mm",
		"moment_Nmm", "moment_x_mm", "moment_y_mm", "energy_Nmm"}}
	for _, b := range braces {
		t.rows = append(t.rows, row([]string{b.Name}, b.Mass, b.Axial.Value, b.Axial.X, b.Axial.Y,
			b.Moment.Value, b.Moment.X, b.Moment.Y, b.Energy))
	}
	return t
}

func stringTable(s *pull.StringsReport) table {
	t := table{name: "strings", head: []string{"name", "x_mm", "tension_N", "front_angle_deg", "back_angle_deg", "downforce_N", "along_N"}}
	for _, e := range s.Each {
		t.rows = append(t.rows, row([]string{e.Name}, e.X, e.Tension, e.FrontAngle, e.BackAngle, e.Downforce, e.Along))
	}
	return t
}

func contactTable(b *answer.BridgeReport) table {
	t := table{name: "contact", head: []string{"x_mm", "y_mm", "gap_mm", "force_N", "pressure_MPa", "drag_across_N", "drag_along_N"}}
	for _, c := range b.Contact {
		t.rows = append(t.rows, row(nil, c.X, c.Y, c.Gap, c.Force, c.Pressure, c.Drag[0], c.Drag[1]))
	}
	return t
}

// loadTable is what each third of the foot carries while the strings are
// brought up to pitch.
func loadTable(b *answer.BridgeReport) table {
	t := table{name: "foot-force", head: []string{"load_1", "bass_end_N", "middle_N", "treble_end_N"}}
	for _, l := range b.ByLoad {
		t.rows = append(t.rows, row(nil, l.Load, l.Thirds[0], l.Thirds[1], l.Thirds[2]))
	}
	return t
}

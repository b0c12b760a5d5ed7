package tree

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// maxCellFaults is the number of faulty cells reported of one table.
const maxCellFaults = 10

// ReadTable reads a CSV file: a header that names the columns, each with its
// unit after the last underscore (x_mm, height_in; a bare x is mm), then one
// row a line. Blank lines and lines beginning with # are passed over. It
// returns nil if anything is wrong.
func (d *Decoder) ReadTable(n *Node, key, name string, cols []Column) *CsvTable {
	_, label := n.Src.Beside(name)
	kind := label
	for _, c := range cols {
		kind += "|" + c.Name + "|" + c.Also
	}
	if t, ok := d.Tables[kind]; ok {
		d.SpoilIf(t == nil, key)
		if t != nil && !slices.Contains(d.Rep.Order, t.Src) { // read for an earlier case
			d.Rep.Order = append(d.Rep.Order, t.Src)
		}
		return t
	}
	d.Tables[kind] = nil
	src, err := OpenBeside(n.Src, name)
	if err != nil {
		d.Fault(n, key, "%q: %w", name, err)
		return nil
	}
	d.Rep.Order = append(d.Rep.Order, src)
	r := csvReader{rep: d.Rep, cols: cols, table: &CsvTable{Src: src, Labels: map[string][]string{}, Values: map[string][]float64{}}}
	r.read()
	if r.alien {
		d.Fault(n, key, "%q is no such table; want one that begins with a header %s", name, r.wanted())
		return nil
	}
	if r.faults > 0 {
		d.SpoilIf(true, key)
		d.Rep.tell(src, n, key)
		return nil
	}
	d.Tables[kind] = r.table
	return r.table
}

// SpoilIf marks a key as faulty because of its table.
func (d *Decoder) SpoilIf(bad bool, key string) {
	if bad {
		d.Rep.spoil(key)
	}
}

// csvReader reads one table.
type csvReader struct {
	rep    *FaultLog
	cols   []Column
	table  *CsvTable
	heads  []csvHead
	parted string // what stands between cells: "," or, with decimal commas, ";" or a tab
	alien  bool   // no table of this kind at all
	faults int
}

// csvHead is a column of the file at hand.
type csvHead struct {
	Column
	written string  // as in the header
	factor  float64 // to base units
}

// fault records a fault at a line, up to the most reported.
func (r *csvReader) fault(line int, key, form string, args ...any) {
	r.faults++
	switch {
	case r.faults < maxCellFaults:
		r.rep.Add(Place{r.table.Src, line}, key, fmt.Errorf(form, args...))
	case r.faults == maxCellFaults:
		r.rep.Add(Place{r.table.Src, line}, key, fmt.Errorf(form+" (further faults of this table are not listed)", args...))
	}
}

// read reads the header and all rows.
func (r *csvReader) read() {
	last := 1
	for i, text := range strings.Split(unixLines(string(r.table.Src.Data)), "\n") {
		text = strings.TrimRight(strings.TrimLeft(text, " "), " ")
		if strings.TrimSpace(text) == "" || text[0] == '#' {
			continue
		}
		last = i + 1
		if r.heads == nil {
			r.parted = partedBy(text)
			if !r.header(r.cells(text), i+1) {
				return
			}
			continue
		}
		if len(r.table.Lines) == maxRows {
			r.fault(i+1, "", "want at most %d rows", maxRows)
			return
		}
		r.row(r.cells(text), i+1)
	}
	if r.heads == nil {
		r.fault(1, "", "want a header %s, found an empty table", r.wanted())
	} else if len(r.table.Lines) == 0 && r.faults == 0 {
		r.fault(last, "", "want rows below the header, found none")
	}
}

// unixLines turns the line ends of other systems, CR LF and CR alone, to LF.
func unixLines(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
}

// partedBy tells what parts the cells of a table from its header. Where
// decimals are written with a comma, spreadsheets part cells by semicolons or
// tabs.
func partedBy(header string) string {
	for _, p := range []string{";", "\t"} {
		if strings.Contains(header, p) && !strings.Contains(header, ",") {
			return p
		}
	}
	return ","
}

// cells parts a line.
func (r *csvReader) cells(text string) []string {
	cells := strings.Split(text, r.parted)
	for j, c := range cells {
		cells[j] = strings.Trim(strings.TrimSpace(c), `"`)
	}
	return cells
}

// number reads a cell; a comma in it is a decimal one if it parts no cells.
func (r *csvReader) number(cell string) (float64, error) {
	if r.parted != "," && strings.Count(cell, ",") == 1 && !strings.Contains(cell, ".") {
		cell = strings.Replace(cell, ",", ".", 1)
	}
	return strconv.ParseFloat(cell, 64)
}

// wanted is the header with the units of bare numbers.
func (r *csvReader) wanted() string {
	var b strings.Builder
	for i, c := range r.cols {
		name := c.names()[0]
		if u := c.Dim.Base(); u != "" {
			name += "_" + u
		}
		if i > 0 {
			name = "," + name
		}
		if c.Optional {
			name = "[" + name + "]"
		}
		b.WriteString(name)
	}
	return b.String()
}

// header reads the column names; it reports whether all is well.
func (r *csvReader) header(cells []string, line int) bool {
	if r.alien = !slices.ContainsFunc(cells, r.resembles); r.alien {
		r.faults++
		return false
	}
	for _, cell := range cells {
		h, err := r.head(cell)
		if err != nil {
			r.fault(line, cell, "%w", err)
			continue
		}
		if slices.ContainsFunc(r.heads, func(o csvHead) bool { return o.Name == h.Name }) {
			r.fault(line, cell, "want the column %s once, found it twice", h.Name)
		}
		r.heads = append(r.heads, h)
	}
	for _, c := range r.cols {
		if !c.Optional && r.faults == 0 && !slices.ContainsFunc(r.heads, func(h csvHead) bool { return h.Name == c.Name }) {
			r.fault(line, c.Name, "column missing; want %s", r.wanted())
		}
	}
	return r.faults == 0
}

// resembles reports whether a cell may be meant as the head of a column here.
func (r *csvReader) resembles(cell string) bool {
	return slices.ContainsFunc(r.cols, func(c Column) bool {
		return Nearest(cell, c.names()) != "" || slices.ContainsFunc(c.names(), func(n string) bool { return cell == n || strings.HasPrefix(cell, n+"_") })
	})
}

// head reads one column name with its unit.
func (r *csvReader) head(cell string) (csvHead, error) {
	var names []string
	for _, c := range r.cols {
		for _, name := range c.names() {
			names = append(names, name)
			if cell == name {
				return csvHead{c, cell, 1}, nil
			}
			unit, ok := strings.CutPrefix(cell, name+"_")
			if !ok {
				continue
			}
			if f, ok := c.Dim.Factor(unit); ok {
				return csvHead{c, cell, f}, nil
			}
			return csvHead{}, fmt.Errorf("want a unit of %s, found %q", c.Dim.unitNames(), unit)
		}
	}
	if like := Nearest(cell, names); like != "" {
		return csvHead{}, fmt.Errorf("unknown column; did you mean %q?", like)
	}
	return csvHead{}, fmt.Errorf("unknown column; want %s", r.wanted())
}

// row reads one row.
func (r *csvReader) row(cells []string, line int) {
	if len(cells) != len(r.heads) {
		r.fault(line, "", "want %d cells as in the header, found %d", len(r.heads), len(cells))
		return
	}
	r.table.Lines = append(r.table.Lines, line)
	for j, h := range r.heads {
		if h.Label {
			if cells[j] == "" {
				r.fault(line, h.written, "want a name or a number, found nothing")
			}
			r.table.Labels[h.Name] = append(r.table.Labels[h.Name], cells[j])
			continue
		}
		x, err := r.number(cells[j])
		x *= h.factor
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			r.fault(line, h.written, "want a number, found %q", cells[j])
		} else if math.Abs(x) > h.Dim.limit {
			r.fault(line, h.written, "want at most %s, found %s", WithUnit(h.Dim.limit, h.Dim.Base()), WithUnit(x, h.Dim.Base()))
		}
		r.table.Values[h.Name] = append(r.table.Values[h.Name], x)
	}
}

// maxRows is the most rows of a table: more than anybody measures by hand, and
// what is fitted in some seconds.
const maxRows = 20000

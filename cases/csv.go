package cases

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// column is one column that a table may have.
type column struct {
	name     string
	dim      dimension // of its numbers
	label    bool      // its cells are names, not numbers
	optional bool
}

// csvTable is a table as read: numbers in base units, by column and row.
type csvTable struct {
	src    *source
	labels map[string][]string
	values map[string][]float64
	lines  []int // line of each row in the file
}

// maxRows is the most rows of a table: more than anybody measures by hand, and
// what is fitted in some seconds.
const maxRows = 20000

// maxCellFaults is the number of faulty cells reported of one table.
const maxCellFaults = 10

// readTable reads a CSV file: a header that names the columns, each with its
// unit after the last underscore (x_mm, height_in; a bare x is mm), then one
// row a line. Blank lines and lines beginning with # are passed over. It
// returns nil if anything is wrong.
func (d *decoder) readTable(n *node, key, name string, cols []column) *csvTable {
	_, label := n.src.beside(name)
	kind := label + "|" + cols[0].name
	if t, ok := d.tables[kind]; ok {
		d.spoilIf(t == nil, key)
		if t != nil && !slices.Contains(d.rep.order, t.src) { // read for an earlier case
			d.rep.order = append(d.rep.order, t.src)
		}
		return t
	}
	d.tables[kind] = nil
	src, err := openBeside(n.src, name)
	if err != nil {
		d.fault(n, key, "%q: %w", name, err)
		return nil
	}
	d.rep.order = append(d.rep.order, src)
	r := csvReader{rep: d.rep, cols: cols, table: &csvTable{src: src, labels: map[string][]string{}, values: map[string][]float64{}}}
	r.read()
	if r.alien {
		d.fault(n, key, "%q is no such table; want one that begins with a header %s", name, r.wanted())
		return nil
	}
	if r.faults > 0 {
		d.spoilIf(true, key)
		return nil
	}
	d.tables[kind] = r.table
	return r.table
}

// spoilIf marks a key as faulty because of its table.
func (d *decoder) spoilIf(bad bool, key string) {
	if bad {
		d.rep.spoil(key)
	}
}

// csvReader reads one table.
type csvReader struct {
	rep    *faultLog
	cols   []column
	table  *csvTable
	heads  []csvHead
	parted string // what stands between cells: "," or, with decimal commas, ";" or a tab
	alien  bool   // no table of this kind at all
	faults int
}

// csvHead is a column of the file at hand.
type csvHead struct {
	column
	written string  // as in the header
	factor  float64 // to base units
}

// fault records a fault at a line, up to the most reported.
func (r *csvReader) fault(line int, key, form string, args ...any) {
	r.faults++
	switch {
	case r.faults < maxCellFaults:
		r.rep.add(place{r.table.src, line}, key, fmt.Errorf(form, args...))
	case r.faults == maxCellFaults:
		r.rep.add(place{r.table.src, line}, key, fmt.Errorf(form+" (further faults of this table are not listed)", args...))
	}
}

// read reads the header and all rows.
func (r *csvReader) read() {
	last := 1
	for i, text := range strings.Split(unixLines(string(r.table.src.data)), "\n") {
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
		if len(r.table.lines) == maxRows {
			r.fault(i+1, "", "want at most %d rows", maxRows)
			return
		}
		r.row(r.cells(text), i+1)
	}
	if r.heads == nil {
		r.fault(1, "", "want a header %s, found an empty table", r.wanted())
	} else if len(r.table.lines) == 0 && r.faults == 0 {
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
		name := c.name
		if u := c.dim.base(); u != "" {
			name += "_" + u
		}
		if i > 0 {
			name = "," + name
		}
		if c.optional {
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
		if slices.ContainsFunc(r.heads, func(o csvHead) bool { return o.name == h.name }) {
			r.fault(line, cell, "want the column %s once, found it twice", h.name)
		}
		r.heads = append(r.heads, h)
	}
	for _, c := range r.cols {
		if !c.optional && r.faults == 0 && !slices.ContainsFunc(r.heads, func(h csvHead) bool { return h.name == c.name }) {
			r.fault(line, c.name, "column missing; want %s", r.wanted())
		}
	}
	return r.faults == 0
}

// resembles reports whether a cell may be meant as the head of a column here.
func (r *csvReader) resembles(cell string) bool {
	return slices.ContainsFunc(r.cols, func(c column) bool {
		return cell == c.name || strings.HasPrefix(cell, c.name+"_") || nearest(cell, []string{c.name}) != ""
	})
}

// head reads one column name with its unit.
func (r *csvReader) head(cell string) (csvHead, error) {
	var names []string
	for _, c := range r.cols {
		names = append(names, c.name)
		if cell == c.name {
			return csvHead{c, cell, 1}, nil
		}
		unit, ok := strings.CutPrefix(cell, c.name+"_")
		if !ok {
			continue
		}
		if f, ok := c.dim.factor(unit); ok {
			return csvHead{c, cell, f}, nil
		}
		return csvHead{}, fmt.Errorf("want a unit of %s, found %q", c.dim.unitNames(), unit)
	}
	if like := nearest(cell, names); like != "" {
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
	r.table.lines = append(r.table.lines, line)
	for j, h := range r.heads {
		if h.label {
			if cells[j] == "" {
				r.fault(line, h.written, "want a name or a number, found nothing")
			}
			r.table.labels[h.name] = append(r.table.labels[h.name], cells[j])
			continue
		}
		x, err := r.number(cells[j])
		x *= h.factor
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			r.fault(line, h.written, "want a number, found %q", cells[j])
		} else if math.Abs(x) > h.dim.limit {
			r.fault(line, h.written, "want at most %s, found %s", withUnit(h.dim.limit, h.dim.base()), withUnit(x, h.dim.base()))
		}
		r.table.values[h.name] = append(r.table.values[h.name], x)
	}
}

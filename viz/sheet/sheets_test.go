package sheet

import (
	"bytes"
	"compress/zlib"
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/shape"

	"archload/mesh"
	"archload/mesh/plane"
)

// measured is one subpath of a file, in mm from the lower left corner of its page.
type measured struct {
	pts    []mesh.Point
	closed bool
	stroke bool
}

func (m measured) box() (lo, hi mesh.Point) { return plane.Bounds(m.pts) }

// leaf is one page as it stands in a file.
type leaf struct {
	w, h  float64 // mm
	paths []measured
}

const scaleBar = 0.001 // relative, the bar that a sheet's scale must meet

// readPDF takes the pages of a PDF apart: sizes from the MediaBox, paths from
// the content streams, at 72 points to the inch (ISO 32000-1, 8.3.2.3).
func readPDF(t *testing.T, data []byte) []leaf {
	t.Helper()
	var out []leaf
	for _, m := range regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`).FindAllSubmatch(data, -1) {
		out = append(out, leaf{w: points(t, string(m[1])), h: points(t, string(m[2]))})
	}
	streams := regexp.MustCompile(`/Length (\d+) /Filter /FlateDecode >>\nstream\n`).FindAllSubmatchIndex(data, -1)
	if len(streams) != len(out) || len(out) == 0 {
		t.Fatalf("PDF: %d pages and %d streams, want as many of both", len(out), len(streams))
	}
	for i, m := range streams {
		n, _ := strconv.Atoi(string(data[m[2]:m[3]]))
		z, err := zlib.NewReader(bytes.NewReader(data[m[1] : m[1]+n]))
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		out[i].paths = pathsOf(t, string(body))
	}
	return out
}

func points(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v * 25.4 / 72
}

func pathsOf(t *testing.T, body string) []measured {
	t.Helper()
	var out, open []measured
	var args []float64
	for _, w := range strings.Fields(body) {
		if v, err := strconv.ParseFloat(w, 64); err == nil {
			args = append(args, v*25.4/72)
			continue
		}
		n := len(args)
		switch w {
		case "m":
			open = append(open, measured{pts: []mesh.Point{{args[n-2], args[n-1]}}})
		case "l", "c":
			open[len(open)-1].pts = append(open[len(open)-1].pts, mesh.Point{args[n-2], args[n-1]})
		case "h":
			open[len(open)-1].closed = true
		case "S", "f":
			for _, p := range open {
				p.stroke = w == "S"
				out = append(out, p)
			}
			open = nil
		case "cm":
			t.Fatal("PDF: a transform, want coordinates that can be measured as they stand")
		}
		args = args[:0]
	}
	return out
}

// squares returns the closed strokes of four corners that measure side mm each
// way, within the bar.
func squares(p leaf, side float64) []measured {
	var out []measured
	for _, m := range p.paths {
		lo, hi := m.box()
		if m.stroke && m.closed && len(m.pts) == 4 && math.Abs(hi[0]-lo[0]-side) <= scaleBar*side && math.Abs(hi[1]-lo[1]-side) <= scaleBar*side {
			out = append(out, m)
		}
	}
	return out
}

// widest returns the line of a page that reaches furthest across and along.
func widest(p leaf) measured {
	var best measured
	most := 0.0
	for _, m := range p.paths {
		lo, hi := m.box()
		if a := (hi[0] - lo[0]) * (hi[1] - lo[1]); m.stroke && a > most {
			best, most = m, a
		}
	}
	return best
}

func sheetsOf(t *testing.T, name string, o Options) []*Sheet {
	t.Helper()
	c, err := cases.Open(nil, name)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := Of(c, o)
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

func pagesOf(t *testing.T, s *Sheet) []leaf {
	t.Helper()
	var b bytes.Buffer
	if err := s.Write(&b, "pdf"); err != nil {
		t.Fatal(err)
	}
	return readPDF(t, b.Bytes())
}

// TestSheetScale measures every sheet of a case on every paper in the PDF's
// own coordinates.
func TestSheetScale(t *testing.T) {
	sheets := sheetsOf(t, "course-guitar-relief", Options{})
	for _, paper := range Papers() {
		for _, s := range sheets {
			s.Paper = paper
			pages := pagesOf(t, s)
			whole := 0
			for i, p := range pages {
				for _, m := range squares(p, 100) {
					if lo, hi := m.box(); lo[0] >= 0 && lo[1] >= 0 && hi[0] <= p.w && hi[1] <= p.h {
						whole++
					}
				}
				if bars := squares10(p); bars != 10 {
					t.Errorf("%s on %s, sheet %d: %d pieces of 10 mm in the bar, want 10", s.Name, paper, i+1, bars)
				}
				if w, h := paper.size(); paper != Roll && math.Abs(p.w*p.h-w*h) > scaleBar*w*h {
					t.Errorf("%s on %s, sheet %d: %g x %g mm, want the paper's %g x %g mm", s.Name, paper, i+1, p.w, p.h, w, h)
				}
			}
			if whole != 1 {
				t.Errorf("%s on %s: %d check squares of 100 mm uncut on a sheet, want 1", s.Name, paper, whole)
			}
			if paper == Roll && len(pages) != 1 {
				t.Errorf("%s on a roll: %d pages, want 1", s.Name, len(pages))
			}
		}
	}
}

// squares10 counts the fields of the bar of 100 mm.
func squares10(p leaf) int {
	n := 0
	for _, m := range p.paths {
		lo, hi := m.box()
		if m.stroke && m.closed && len(m.pts) == 4 && math.Abs(hi[0]-lo[0]-10) <= scaleBar*10 && math.Abs(hi[1]-lo[1]-2) < 0.01 {
			n++
		}
	}
	return n
}

// TestSheetJoints checks that the outline on each sheet is as large as the
// plate, and that sheets laid cross over cross continue it.
func TestSheetJoints(t *testing.T) {
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	notes, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	lo, hi := notes.Outline.Bounds()
	plan := sheetsOf(t, "course-guitar", Options{})[0]
	tiles, _ := plan.tile()
	pages := pagesOf(t, plan)
	if len(pages) < 4 || len(pages) != len(tiles.cells) {
		t.Fatalf("plan: %d sheets for %d cells, want as many and at least 4", len(pages), len(tiles.cells))
	}
	var at []mesh.Point // where the plate's lower left corner lies, from the origin of the register marks
	for i, p := range pages {
		a, b := widest(p).box()
		for k := range 2 {
			if got, want := b[k]-a[k], hi[k]-lo[k]; math.Abs(got-want) > scaleBar*want {
				t.Errorf("sheet %d: the outline measures %.3f mm along axis %d, want %.3f", i+1, got, k, want)
			}
		}
		cell, _ := tiles.box(tiles.cells[i][0], tiles.cells[i][1])
		mark := mesh.Point{sheetEdge + sheetLap, sheetEdge + sheetFoot + sheetLap}
		if !crossAt(p, mark) {
			t.Errorf("sheet %d: no register mark at %v mm", i+1, mark)
		}
		at = append(at, mesh.Point{a[0] - mark[0] + cell[0], a[1] - mark[1] + cell[1]})
	}
	for i, p := range at {
		if d := math.Hypot(p[0]-at[0][0], p[1]-at[0][1]); d > 0.002 {
			t.Errorf("sheet %d laid to the marks is off by %.4f mm from sheet 1, want at most 0.002", i+1, d)
		}
	}
}

// crossAt looks for two short lines that cross in a point.
func crossAt(p leaf, at mesh.Point) bool {
	n := 0
	for _, m := range p.paths {
		if len(m.pts) == 2 && m.stroke && math.Hypot((m.pts[0][0]+m.pts[1][0])/2-at[0], (m.pts[0][1]+m.pts[1][1])/2-at[1]) < 0.002 {
			n++
		}
	}
	return n == 2
}

// TestTemplateHeights reads the arch off the templates in the PDF.
func TestTemplateHeights(t *testing.T) {
	c, err := cases.Open(nil, "octave-mandola")
	if err != nil {
		t.Fatal(err)
	}
	notes, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	s := shop{c: c, plate: notes.Plate, notes: notes, rim: notes.Outline.Polyline(0.02)}
	stations := s.crossStations()
	if len(stations) < 4 {
		t.Fatalf("%d stations, want those of the case's own templates", len(stations))
	}
	sheet := s.crossArches()
	sheet.Paper = Roll
	seen := 0
	for _, m := range pagesOf(t, sheet)[0].paths {
		if !m.stroke || !m.closed || len(m.pts) < 30 || seen == len(stations) {
			continue
		}
		st := stations[seen]
		seen++
		n := len(m.pts) - 2 // the last two are the straight upper edge
		left, rise := m.pts[0][0], notes.Plate.Outer.At(mesh.Point{st.from, st.at}).Z-m.pts[0][1]
		for _, p := range m.pts[:n] {
			want := notes.Plate.Outer.At(mesh.Point{p[0] - left + st.from, st.at}).Z
			if got := p[1] + rise; math.Abs(got-want) > 0.005 {
				t.Fatalf("template at y = %g, %.2f mm from its end: %.4f mm high, want %.4f", st.at, p[0]-left, got, want)
			}
		}
		if got, want := m.pts[n-1][0]-left, st.to-st.from; math.Abs(got-want) > scaleBar*want {
			t.Errorf("template at y = %g: %.3f mm long, want %.3f, the outline's width there", st.at, got, want)
		}
		if edge := m.pts[n][1] + rise; math.Abs(edge-math.Round(edge)) > 0.005 {
			t.Errorf("template at y = %g: upper edge %.3f mm above the rim's gluing surface, want the whole number that is written on it", st.at, edge)
		}
	}
	if seen != len(stations) {
		t.Errorf("%d templates, want %d", seen, len(stations))
	}
}

// TestSheetSVG checks the size that the drawing in one piece states, and its
// square.
func TestSheetSVG(t *testing.T) {
	for _, s := range sheetsOf(t, "course-guitar-two-feet", Options{}) {
		var b bytes.Buffer
		if err := s.Write(&b, "svg"); err != nil {
			t.Fatal(err)
		}
		var doc struct {
			Width   string `xml:"width,attr"`
			ViewBox string `xml:"viewBox,attr"`
			Paths   []struct {
				D string `xml:"d,attr"`
			} `xml:"path"`
		}
		if err := xml.Unmarshal(b.Bytes(), &doc); err != nil {
			t.Fatal(err)
		}
		w, ok := strings.CutSuffix(doc.Width, "pt")
		if !ok || !strings.HasPrefix(doc.ViewBox, "0 0 "+w+" ") {
			t.Errorf("%s: width %q and view box %q, want a true size in pt, one unit a point", s.Name, doc.Width, doc.ViewBox)
		}
		found := 0
		for _, p := range doc.Paths {
			v := regexp.MustCompile(`-?[\d.]+`).FindAllString(p.D, -1)
			if len(v) != 8 || strings.Count(p.D, "L") != 3 {
				continue
			}
			if got := points(t, v[2]) - points(t, v[0]); math.Abs(got-100) < 100*scaleBar && math.Abs(points(t, v[5])-points(t, v[1])+100) < 100*scaleBar {
				found++
			}
		}
		if found != 1 {
			t.Errorf("%s: %d squares of 100 mm, want 1", s.Name, found)
		}
	}
}

package main

import (
	"bytes"
	"fmt"
	"math"

	"archload/mesh"
	"archload/mesh/surface"
)

// The drawing: the course guitar on a page as a drawing program saves it, y
// running down, traced from the same shapes as the tables.
const (
	pageWide, pageHigh   = 460.0, 560.0 // mm
	originRight          = 230.0        // mm from the page's left edge
	originDown           = 335.0        // mm from its upper edge
	markSize, markRadius = 6.0, 3.0     // mm
	spotRadius           = 1.0          // mm
	rulerLength          = 300.0        // mm
)

// onPage returns a place of the plate on the page, mm.
func onPage(p mesh.Point) mesh.Point { return mesh.Point{originRight + p[0], originDown - p[1]} }

// drawing writes outline, treble f-hole, contour lines and spot heights as one
// SVG file.
func drawing(hole []mesh.Point, lines []surface.ContourLine) ([]byte, error) {
	var b bytes.Buffer
	fmt.Fprintf(&b, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%gmm\" height=\"%gmm\" viewBox=\"0 0 %g %g\">\n",
		pageWide, pageHigh, pageWide, pageHigh)
	b.WriteString("<title>Course guitar: outline, f-hole and arch, drawn from outside</title>\n<g id=\"marks\" fill=\"none\" stroke=\"green\">\n")
	o := onPage(mesh.Point{})
	fmt.Fprintf(&b, "<path id=\"origin\" d=\"M %g %g h %g m %g %g v %g\"/>\n", o[0]-markSize/2, o[1], markSize, -markSize/2, -markSize/2, markSize)
	for _, m := range []struct {
		name string
		at   mesh.Point
	}{{"neck", mesh.Point{0, 322}}, {"treble", mesh.Point{214, 0}}} {
		p := onPage(m.at)
		fmt.Fprintf(&b, "<circle id=\"%s\" cx=\"%g\" cy=\"%g\" r=\"%g\"/>\n", m.name, p[0], p[1], markRadius)
	}
	fmt.Fprintf(&b, "<line id=\"ruler_%g_mm\" x1=\"80\" y1=\"550\" x2=\"%g\" y2=\"550\"/>\n</g>\n", rulerLength, 80+rulerLength)
	b.WriteString("<g id=\"cuts\" fill=\"none\" stroke=\"black\">\n")
	fmt.Fprintf(&b, "<path id=\"outline\" d=\"%s\"/>\n<path id=\"f-hole\" d=\"%s\"/>\n</g>\n", arcPath(trebleHalf()), smoothPath(hole))
	b.WriteString("<g id=\"contours\" fill=\"none\" stroke=\"brown\">\n")
	if err := drawLines(&b, lines); err != nil {
		return nil, err
	}
	b.WriteString("</g>\n</svg>\n")
	return b.Bytes(), nil
}

// drawLines writes the contour lines in a group for each height, and the spots
// as circles that carry theirs.
func drawLines(b *bytes.Buffer, lines []surface.ContourLine) error {
	level := math.NaN()
	end := func() {
		if !math.IsNaN(level) {
			b.WriteString("</g>\n")
		}
		level = math.NaN()
	}
	for _, l := range lines {
		if len(l.Points) == 1 {
			end()
			p := onPage(l.Points[0])
			fmt.Fprintf(b, "<circle id=\"spot_%g_mm_%s\" cx=\"%g\" cy=\"%g\" r=\"%g\"/>\n", l.Height, l.ID, round100(p[0]), round100(p[1]), spotRadius)
			continue
		}
		if gap := distance(l.Points[0], l.Points[len(l.Points)-1]); gap > 20 {
			return fmt.Errorf("contour line %s at %g mm is open by %.1f mm", l.ID, l.Height, gap)
		}
		if l.Height != level {
			end()
			level = l.Height
			fmt.Fprintf(b, "<g id=\"arch_%g_mm\">\n", level)
		}
		fmt.Fprintf(b, "<path id=\"line-%s\" d=\"%s\"/>\n", l.ID, smoothPath(l.Points))
	}
	end()
	return nil
}

func round100(v float64) float64 { return rounded(v, 100) }

// arcPath writes the whole outline from its treble half, tail to neck, and the
// mirror image back. What turns anticlockwise on the plate turns so for the
// eye; on a page whose y runs down that is sweep 0.
func arcPath(half []arc) string {
	var b bytes.Buffer
	at := onPage(half[0].at(0))
	fmt.Fprintf(&b, "M %g %g", round100(at[0]), round100(at[1]))
	piece := func(a arc, end mesh.Point) {
		sweep := 0
		if a.to < a.from {
			sweep = 1
		}
		p := onPage(end)
		fmt.Fprintf(&b, " A %g %g 0 0 %d %g %g", round100(a.radius), round100(a.radius), sweep, round100(p[0]), round100(p[1]))
	}
	for _, a := range half {
		piece(a, a.at(a.length()))
	}
	for k := len(half) - 1; k >= 0; k-- {
		p := half[k].at(0)
		piece(half[k], mesh.Point{-p[0], p[1]})
	}
	b.WriteString(" Z")
	return b.String()
}

// smoothPath writes a closed smooth curve through points: cubic pieces whose
// tangent at a point is parallel to the chord of its neighbours (E. Catmull,
// R. Rom, 1974), one third of half that chord long.
func smoothPath(pts []mesh.Point) string {
	n := len(pts)
	var b bytes.Buffer
	tangent := func(i int) mesh.Point {
		p, q := pts[(i+n-1)%n], pts[(i+1)%n]
		return mesh.Point{(q[0] - p[0]) / 6, (q[1] - p[1]) / 6}
	}
	pair := func(p mesh.Point) {
		q := onPage(p)
		fmt.Fprintf(&b, " %g %g", round100(q[0]), round100(q[1]))
	}
	b.WriteString("M")
	pair(pts[0])
	for i := range n {
		p, q := pts[i], pts[(i+1)%n]
		t, u := tangent(i), tangent((i+1)%n)
		if i == 0 {
			b.WriteString(" C")
			pair(mesh.Point{p[0] + t[0], p[1] + t[1]})
		} else {
			b.WriteString(" S")
		}
		pair(mesh.Point{q[0] - u[0], q[1] - u[1]})
		pair(q)
	}
	b.WriteString(" Z")
	return b.String()
}

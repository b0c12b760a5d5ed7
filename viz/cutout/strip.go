package cutout

import (
	"fmt"
	"image/color"
	"math"
	"slices"

	"archload/viz/scene"
)

// Strip is a scene in which of everything that is x0 - half to x0 + half wide, mm, is left, with its cut faces, and
// two arrows of perNewton mm to a newton at its ends: how hard it pushes outward there, N.
func Strip(s *scene.Scene, x0, half, tail, neck, perNewton float64) *scene.Scene {
	out := *s
	out.Solids, out.Lines, out.Labels = nil, nil, nil
	planes := [2]plane{{-1, half - x0}, {1, half + x0}}
	for _, o := range s.Solids {
		if c := clipped(o, planes); len(c.Tris) > 0 {
			out.Solids = append(out.Solids, c)
		}
	}
	for _, l := range s.Lines {
		out.Lines = append(out.Lines, parts(l, x0, half)...)
	}
	for _, l := range s.Labels {
		if math.Abs(l.At[0]-x0) <= half && l.Kind != scene.Level && l.Kind != scene.Orientation {
			out.Labels = append(out.Labels, l)
		}
	}
	var rims [2][]vec
	for i, side := range []float64{-1, 1} {
		upper, lower := skin(s, "plate outside", x0+side*half), skin(s, "plate inside", x0+side*half)
		if len(upper) < 2 || len(lower) < 2 {
			return s // there is no plate to be cut here
		}
		out.Solids = append(out.Solids, wall(upper, lower, side))
		out.Lines = append(out.Lines, edge(upper), edge(lower))
		rims[i] = upper
	}
	slices.Reverse(rims[1])
	out.Edge = append(slices.Clone(rims[0]), rims[1]...)
	first, last := rims[0][0], rims[0][len(rims[0])-1]
	arrow(&out, vec{x0, first[1], first[2]}, -1, tail, perNewton)
	arrow(&out, vec{x0, last[1], last[2]}, 1, neck, perNewton)
	return &out
}

// The colours of what is drawn new.
func cutColor() color.NRGBA  { return color.NRGBA{212, 186, 146, 255} }
func edgeColor() color.NRGBA { return color.NRGBA{70, 52, 38, 255} }
func pushColor() color.NRGBA { return color.NRGBA{44, 32, 24, 255} }

// wall is the face of the cut between two lines over y, seen from outside at the side, -1 or 1.
func wall(upper, lower []vec, side float64) *scene.Solid {
	o := &scene.Solid{Name: "cut", Paint: cutColor()}
	for _, p := range upper {
		o.Points = append(o.Points, p, vec{p[0], p[1], height(lower, p[1])})
		o.Normals = append(o.Normals, vec{side, 0, 0}, vec{side, 0, 0})
	}
	for i := int32(2); int(i) < len(o.Points); i += 2 {
		a, b, c, d := i-2, i-1, i+1, i // upper, lower, lower, upper toward the neck
		if side > 0 {
			b, d = d, b
		}
		o.Tris = append(o.Tris, [3]int32{a, d, c}, [3]int32{a, c, b})
	}
	return o
}

// height is that of a line over y at one place, mm.
func height(line []vec, y float64) float64 {
	i, _ := slices.BinarySearchFunc(line, y, func(p vec, y float64) int {
		if p[1] < y {
			return -1
		}
		return 1
	})
	i = max(1, min(i, len(line)-1))
	a, b := line[i-1], line[i]
	if b[1] == a[1] {
		return b[2]
	}
	u := math.Max(0, math.Min(1, (y-a[1])/(b[1]-a[1])))
	return a[2] + u*(b[2]-a[2])
}

func edge(line []vec) *scene.Line {
	return &scene.Line{Points: slices.Clone(line), Width: 1.2, Paint: edgeColor()}
}

// arrow adds what an end pushes with, along y with a sense, from the end outward.
func arrow(s *scene.Scene, from vec, sense, force, perNewton float64) {
	const off, least = 3.0, 0.5 // mm
	long := force * perNewton
	from[1] += sense * off
	tip := vec{from[0], from[1] + sense*long, from[2]}
	words := fmt.Sprintf("pushes with %.0f N", force)
	if force < 0 {
		words = fmt.Sprintf("pulls with %.0f N", -force)
	}
	if math.Abs(long) > least {
		head := math.Copysign(math.Min(9, 0.6*math.Abs(long)), long)
		s.Lines = append(s.Lines, &scene.Line{Points: []vec{from, tip}, Width: 4, Paint: pushColor(), Halo: true, Over: true})
		for _, side := range []vec{{0.4 * head, 0, 0}, {0, 0, 0.4 * head}} {
			back := vec{tip[0], tip[1] - sense*head, tip[2]}
			s.Lines = append(s.Lines, &scene.Line{Points: []vec{{back[0] + side[0], back[1], back[2] + side[2]}, tip, {back[0] - side[0], back[1], back[2] - side[2]}},
				Width: 3.2, Paint: pushColor(), Halo: true, Over: true})
		}
	}
	s.Labels = append(s.Labels, scene.Label{Text: words, At: vec{from[0], from[1], from[2] + off}, Kind: scene.Force, Toward: vec{0, 0, 1}})
}

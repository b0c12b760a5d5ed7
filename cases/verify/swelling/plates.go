package swelling

import (
	"context"
	"math"

	"archload/cases/aging"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/cases/verify/problem"
	"archload/fem/vec3"
	"archload/mesh"
)

// freePlate is a free carved plate of Sitka spruce, quarter-cut, that takes up four points of moisture: the
// largest distance of a gauge's movement from (R c x, L c y, T c z), relative to the largest movement, and its energy
// over that of the same plate on hinged edges.
func freePlate(ctx context.Context) (problem.Readings, error) {
	free, err := seasonOf(ctx, "free")
	if err != nil {
		return nil, err
	}
	held, err := seasonOf(ctx, "held")
	if err != nil {
		return nil, err
	}
	c, err := load("free")
	if err != nil {
		return nil, err
	}
	w, points := c.Cards["plate.wood"].Water.Swell, *c.Season.Moisture
	geometry, err := shape.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	miss, most := 0.0, 0.0
	for _, g := range free.Gauges {
		z := geometry.Plate.Outer.At(mesh.Point{g.X, g.Y}).Z
		want := [3]float64{points * w[1] * g.X, points * w[0] * g.Y, points * w[2] * z}
		miss, most = max(miss, vec3.Norm(vec3.Sub(g.Displacement, want))), max(most, vec3.Norm(want))
	}
	return problem.Readings{"miss": miss / most, "energy": free.Energy.Total / held.Energy.Total}, nil
}

// wholeBody is a body of one wood that swells alike in every direction, its rigid blocks too, and stands on its neck
// block: the largest distance of a gauge's movement from e (x - x0), x0 being the place where it stands, but for the little by which
// it tips as the tail block keeps its level, relative to the largest movement, and its energy over that of the same body with blocks that keep their size.
func wholeBody(ctx context.Context) (problem.Readings, error) {
	free, err := seasonOf(ctx, "body")
	if err != nil {
		return nil, err
	}
	c, err := load("body")
	if err != nil {
		return nil, err
	}
	g, err := shape.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	e := *c.Season.Moisture * c.Cards["plate.wood"].Water.Swell[0]
	down := -float64(c.Rim.SideHeight)
	foot := func(k shape.Block) [3]float64 {
		return [3]float64{k.Edge[0], k.Edge[1], down - g.Back.Plate.Mid(k.Edge).P[2]}
	}
	neck := foot(g.Blocks[0])
	apart := vec3.Sub(foot(g.Blocks[1]), neck)
	tip := [3]float64{-e * apart[2] / apart[1]} // the tail block stays on the level where it stands
	miss, most := 0.0, 0.0
	for i, r := range free.Gauges {
		at := mesh.Point{r.X, r.Y}
		z := g.Plate.Outer.At(at).Z
		if c.Gauges[i].On == "back" {
			z = down - g.Back.Plate.Outer.At(at).Z
		}
		away := vec3.Sub([3]float64{r.X, r.Y, z}, neck)
		want := vec3.Add(vec3.Scale(away, e), vec3.Cross(tip, away))
		miss, most = max(miss, vec3.Norm(vec3.Sub(r.Displacement, want))), max(most, vec3.Norm(want))
	}
	block := c.Cards["body.block_wood"]
	block.Water.Swell = [3]float64{}
	c.Cards["body.block_wood"] = block
	still, err := aging.Seasons(ctx, c, aging.Wish{}, design.Options{NoError: true})
	if err != nil {
		return nil, err
	}
	return problem.Readings{"miss": miss / most, "energy": free.Energy.Total / still.Seasons[0].Energy.Total}, nil
}

// flatPlate is a free flat plate with moisture linear from face to face: its curvatures over 2 e/h, and the
// greatest stress across the grain over that of the same wood held, MPa over MPa.
func flatPlate(ctx context.Context) (problem.Readings, error) {
	s, err := seasonOf(ctx, "flat")
	if err != nil {
		return nil, err
	}
	c, err := load("flat")
	if err != nil {
		return nil, err
	}
	card := c.Cards["plate.wood"]
	half := (*c.Season.MoistureOuter - *c.Season.MoistureInner) / 2
	bend := func(g int, along, swell float64) float64 {
		k := 2 * (s.Gauges[0].Displacement[2] - s.Gauges[g].Displacement[2]) / (along * along)
		return k / (2 * half * swell / float64(c.Plate.EvenThickness()))
	}
	held := card.Wood.ER * half * card.Water.Swell[1]
	return problem.Readings{
		"across": bend(1, s.Gauges[1].X, card.Water.Swell[1]), "along": bend(2, s.Gauges[2].Y, card.Water.Swell[0]),
		"stress": math.Abs(float64(s.Across.Stress)) / held,
	}, nil
}

// damperAir is a free flat plate that goes from the air in which it was made to damper air: by how many percentage points of
// moisture a gauge has moved across the grain.
func damperAir(ctx context.Context) (problem.Readings, error) {
	s, err := seasonOf(ctx, "air")
	if err != nil {
		return nil, err
	}
	c, err := load("air")
	if err != nil {
		return nil, err
	}
	g := s.Gauges[1]
	return problem.Readings{"points": g.Displacement[0] / (g.X * c.Cards["plate.wood"].Water.Swell[1])}, nil
}

// twoLayers is a strip of two layers of which one swells: its curvature over
//
//	6 e (1 + m)² / (h (3 (1 + m)² + (1 + m n)(m² + 1/(m n)))),  m = h1/h2, n = E1/E2
//
// (S. Timoshenko, Analysis of bi-metal thermostats, Journal of the Optical Society of America 11, 1925, 233).
func twoLayers(ctx context.Context) (problem.Readings, error) {
	s, err := seasonOf(ctx, "strip")
	if err != nil {
		return nil, err
	}
	c, err := load("strip")
	if err != nil {
		return nil, err
	}
	plate, bar := c.Cards["plate.wood"], c.Cards["brace[1].wood"]
	h1, h2 := float64(c.Plate.EvenThickness()), c.Braces[0].HeightAt(0.5)
	m, n := h1/h2, plate.Wood.EL/bar.Wood.EL
	e := *c.Season.Moisture * plate.Water.Swell[0]
	want := 6 * e * (1 + m) * (1 + m) / ((h1 + h2) * (3*(1+m)*(1+m) + (1+m*n)*(m*m+1/(m*n))))
	g := s.Gauges
	got := (2*g[0].Displacement[2] - g[1].Displacement[2] - g[2].Displacement[2]) / (g[1].Y * g[1].Y)
	return problem.Readings{"curvature": got / want}, nil
}

package scene

import (
	"math"
	"sync"

	"archload/fem/vec3"
)

// Sizes of the yearly rings as drawn: of spruce for a top, close by the joint and wider
// toward the edges, as billets opened like a book have it. Common practice, no published
// source.
const (
	ringNarrow = 1.2   // mm of a ring beside the joint
	ringWide   = 2.6   // mm of one at grainReach
	lateStart  = 0.62  // share of a ring where late wood begins
	earlyDark  = 0.10  // how dark early wood gets before that, of late wood
	jointHalf  = 0.22  // mm, half the joint's width
	grainReach = 240.0 // mm from the joint
	lateStep   = 0.1   // mm from one entry of LateSums to the next
	lateCount  = 4096  // its entries
	leastWide  = 0.02  // mm below which a stretch of wood is not told apart
)

// What late wood takes away of red, green and blue where it is darkest, and by how much
// less than the light these sink in its shade: wood in shade is a little warmer.
const (
	lateRed, lateGreen, lateBlue = 0.21, 0.31, 0.43
	warmRed, warmGreen, warmBlue = 0.17, 0.02, -0.13
)

// The gloss of wood: how bright, how small, and how much a slope along the grain counts
// less than one across, so that it runs along the grain.
const (
	glossBright  = 0.07
	glossPower   = 14
	glossStretch = 0.75
)

// LateSums is how much late wood lies between the joint and a place across the grain,
// mm of its darkest, every lateStep mm from 0. The mean darkness of any stretch is a
// difference of two entries through its length: grain drawn so never flickers, however
// small it gets.
func LateSums() []float32 { return lateSums() }

var lateSums = sync.OnceValue(func() []float32 {
	sums := make([]float32, lateCount)
	total, from, year := 0.0, 0.0, 0
	wide, dark := ringOf(year, from)
	for i := range sums {
		sums[i] = float32(total)
		x := (float64(i) + 0.5) * lateStep
		for x >= from+wide {
			from, year = from+wide, year+1
			wide, dark = ringOf(year, from)
		}
		d := dark * lateAt((x-from)/wide)
		if x < jointHalf {
			d = 1.2
		}
		total += d * lateStep
	}
	return sums
})

// ringOf is the width of a yearly ring that begins at a distance from the joint, mm, and
// how dark its late wood is: good years and bad ones, singly and in rows.
func ringOf(year int, from float64) (wide, dark float64) {
	k := float64(year)
	chance := math.Abs(math.Mod(math.Sin(12.9898*k)*43758.5453, 1))
	row := math.Sin(0.31*k) * math.Sin(0.083*k+1)
	wide = ringNarrow + (ringWide-ringNarrow)*math.Min(1, from/grainReach)
	return wide * (0.7 + 0.6*chance + 0.2*row), 0.5 + 0.35*chance - 0.3*row
}

// lateAt is how dark a ring is at a share of its width from its beginning, of its
// darkest: slowly darker, then dark, then at once light again.
func lateAt(u float64) float64 {
	switch {
	case u < lateStart:
		return earlyDark * u / lateStart
	case u < 0.9:
		t := (u - lateStart) / (0.9 - lateStart)
		return earlyDark + (1-earlyDark)*t*t*(3-2*t)
	}
	return 1 - 0.9*(u-0.9)/0.1
}

// lateMean is the mean darkness of the wood over a stretch across the grain about a
// place, both in mm.
func lateMean(at, wide float64) float64 {
	wide = math.Max(wide, leastWide)
	return (lateTo(at+wide/2) - lateTo(at-wide/2)) / wide
}

// lateTo is LateSums at a place, mm, on either side of the joint.
func lateTo(at float64) float64 {
	sums := lateSums()
	s := math.Min(math.Abs(at)/lateStep, lateCount-1.001)
	i := int(s)
	a, b := float64(sums[i]), float64(sums[i+1])
	return math.Copysign(a+(s-float64(i))*(b-a), at)
}

// acrossGrain is how far each node lies from the joint across the grain, mm, and the
// direction along it. The joint runs through the middle of the outline's box.
func (k *Skeleton) acrossGrain(angle float64) (across []float64, along vec) {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	y := (k.lo[1] + k.hi[1]) / 2
	across = make([]float64, len(k.mesh.Points))
	for i, p := range k.mesh.Points {
		across[i] = p[0]*cos + (p[1]-y)*sin
	}
	return across, vec{-sin, cos, 0}
}

// grained makes a solid wood whose yearly rings cross a direction, its grain along another.
func (o *Solid) grained(along, across vec) *Solid {
	const far = 60.0 // mm from a joint that is not there
	o.Along = unit(along)
	o.Across = make([]float64, len(o.Points))
	for i, p := range o.Points {
		o.Across[i] = far + vec3.Dot(vec3.Sub(p, o.Points[0]), across)
	}
	return o
}

// sheen is how much brighter wood is where its gloss throws the light to the eye: of a
// normal, the direction half way between light and eye, and the one along the grain.
func sheen(normal, half, along vec) float64 {
	n := plus(normal, -glossStretch*vec3.Dot(normal, along), along)
	c := vec3.Dot(unit(n), half)
	return glossBright * math.Pow(math.Max(0, c), glossPower)
}

// woodLit is the colour of wood of so much late wood in so much light, in 256ths.
func woodLit(paint uint32, late float64, light uint32) uint32 {
	shade := 256 - float64(light)
	part := func(v uint32, takes, warm float64) uint32 {
		return uint32(math.Min(255, math.Max(0, float64(v)*(1-takes*late)*(float64(light)+warm*shade)/256)))
	}
	return part(paint>>16, lateRed, warmRed)<<16 | part(paint>>8&255, lateGreen, warmGreen)<<8 | part(paint&255, lateBlue, warmBlue)
}

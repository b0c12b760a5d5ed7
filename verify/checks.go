package verify

import (
	"context"
	"fmt"
)

// check is a problem that can be built and solved: on meshes of a given
// density, or once and for all.
type check struct {
	meshed func(ctx context.Context, at density) (readings, error)
	single func(ctx context.Context) (readings, error)
	steps  []int  // the densities of a trend, each twice the one before
	size   string // how a density is called: "" for divisions
}

// usual is the finest density that an ordinary run meshes.
const usualDivisions = 32

func (c *check) usual() int { return usualDivisions }

// label names a mesh.
func (c *check) label(n int, shake float64) string {
	if c.size != "" {
		return fmt.Sprintf("%.3g %s", 192/float64(n), c.size)
	}
	if shake > 0 {
		return fmt.Sprintf("%d distorted", n)
	}
	return fmt.Sprintf("%d regular", n)
}

// onSquares is a problem on halved squares.
func onSquares(f func(d density) (readings, error)) check {
	return check{steps: []int{4, 8, 16, 32, 64}, meshed: func(_ context.Context, d density) (readings, error) { return f(d) }}
}

// once is a problem without a mesh of its own.
func once(f func() (readings, error)) check {
	return check{single: func(context.Context) (readings, error) { return f() }}
}

// problems are all problems by the name that the tables use.
func problems() map[string]check {
	edges := func(f func(ctx context.Context, at density) (readings, error)) check {
		return check{meshed: f, steps: []int{8, 16, 32, 64}, size: "mm"}
	}
	clamped, supported := supports{'c', 'c'}, supports{'s', 's'}
	all := map[string]check{
		"scordelis":        onSquares(scordelisLo),
		"pinched":          onSquares(pinchedCylinder),
		"hemisphere":       onSquares(hemisphere),
		"twisted":          onSquares(twistedBeam),
		"curved beam":      onSquares(curvedBeam),
		"cook":             onSquares(cook),
		"LE1":              onSquares(ellipticMembrane),
		"LE2":              onSquares(cylinderPatch),
		"hypar":            onSquares(clampedHypar),
		"hypar growth":     onSquares(hyparGrowth),
		"bent cylinder":    onSquares(bentCylinder),
		"square supported": onSquares(squarePlate(supported)),
		"square clamped":   onSquares(squarePlate(clamped)),
		"square two free":  onSquares(squarePlate(supports{'s', 'f'})),
		"long supported":   onSquares(longPlate(supported)),
		"long clamped":     onSquares(longPlate(clamped)),
		"skew":             onSquares(skewPlate),
		"disc clamped":     onSquares(discPlate(true)),
		"disc supported":   onSquares(discPlate(false)),
		"wood thin":        onSquares(woodPlate(4, supported, rigidInShear(testWood()))),
		"wood supported":   onSquares(woodPlate(4, supported, testWood())),
		"wood thick":       onSquares(woodPlate(30, supported, testWood())),
		"wood clamped":     onSquares(woodPlate(4, clamped, testWood())),
		"wood clamped KL":  onSquares(woodPlate(4, clamped, rigidInShear(testWood()))),
		"wood two clamped": onSquares(woodPlate(4, supports{'c', 's'}, rigidInShear(testWood()))),
		"laminate 10":      onSquares(laminate(10)),
		"laminate 20":      onSquares(laminate(20)),
		"laminate 100":     onSquares(laminate(100)),
		"arch":             onSquares(archUnderPressure),
		"arch on feet":     onSquares(archOnFeet),
		"tee":              onSquares(teeBeam),
		"rib below":        onSquares(ribbedPlate(true)),
		"rib concentric":   onSquares(ribbedPlate(false)),
		"carved strip":     onSquares(carvedStrip),

		"patch":            once(patches),
		"spectrum":         once(spectrum),
		"series":           once(series),
		"ritz":             once(ritzPlates),
		"rotations":        once(rotations),
		"strings":          once(stringForces),
		"relieved bar":     once(relievedBar),
		"rigid ground":     once(rigidGround),
		"cantilever stop":  once(cantileverStop),
		"clamped stop":     once(clampedStop),
		"two feet":         once(twoFeet),
		"three point":      once(threePoint),
		"brute force":      once(bruteForce),
		"triangles":        once(triangles),
		"contours":         once(contours),
		"supported series": once(supportedSeries),
		"supported case":   edges(supportedCase),
	}
	for _, rim := range []string{"clamped", "hinged"} {
		all["solid "+rim+" P"] = solidPlate{rim, "P", true}.check()
		all["solid "+rim+" S"] = solidPlate{rim, "S", true}.check()
		all["solid "+rim+" bare"] = solidPlate{rim, "P", false}.check()
	}
	return all
}

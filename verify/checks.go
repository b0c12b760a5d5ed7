package verify

import (
	"context"
	"fmt"
	"maps"
	"strconv"
)

// check is a problem that can be built and solved: on meshes of a given
// density, or once and for all.
type check struct {
	meshed func(ctx context.Context, at density) (readings, error)
	single func(ctx context.Context) (readings, error)
	steps  []int // the densities of a trend, each twice the one before
	mesher bool  // on the program's own mesh
	edges  bool  // the density stands for the length of the edges: 32 for the default of 6 mm
}

// usual is the finest density that an ordinary run meshes.
const usual = 48

// label names a mesh.
func (c *check) label(n int, shake float64) string {
	switch {
	case c.edges:
		return "edges " + c.step(n)
	case c.mesher:
		return fmt.Sprintf("%d own mesh", n)
	case shake > 0:
		return fmt.Sprintf("%d distorted", n)
	}
	return fmt.Sprintf("%d regular", n)
}

// step names a density.
func (c *check) step(n int) string {
	if c.edges {
		return fmt.Sprintf("%.3g mm", defaultEdge*defaultDensity/float64(n))
	}
	return strconv.Itoa(n)
}

// The density that stands for the program's default edges, mm.
const (
	defaultDensity = 32
	defaultEdge    = 6.0
)

// onSquares is a problem on halved squares.
func onSquares(f func(d density) (readings, error)) check {
	return check{steps: []int{4, 8, 16, 32, 64}, meshed: func(_ context.Context, d density) (readings, error) { return f(d) }}
}

// onOwnMesh is a problem on the program's own mesh of n edges across.
func onOwnMesh(f func(d density) (readings, error)) check {
	c := onSquares(f)
	c.mesher = true
	return c
}

// byEdges is a problem of the whole chain, by the length of the edges.
func byEdges(f func(ctx context.Context, at density) (readings, error)) check {
	return check{meshed: f, steps: []int{8, 16, 32, 64}, edges: true}
}

// once is a problem without a mesh of its own.
func once(f func() (readings, error)) check {
	return check{single: func(context.Context) (readings, error) { return f() }}
}

// problems are all problems by the name that the tables use.
func problems() map[string]check {
	all := onceProblems()
	maps.Copy(all, shellProblems())
	maps.Copy(all, plateProblems())
	all["supported case"] = byEdges(supportedCase)
	for _, rim := range []string{"clamped", "hinged"} {
		all["solid "+rim+" P"] = byEdges(solidPlate{rim, "P", true}.solve)
		all["solid "+rim+" S"] = byEdges(solidPlate{rim, "S", true}.solve)
		all["solid "+rim+" bare"] = byEdges(solidPlate{rim, "P", false}.solve)
	}
	return all
}

// shellProblems are shells, panels and ribbed plates.
func shellProblems() map[string]check {
	return map[string]check{
		"scordelis":      onSquares(scordelisLo),
		"pinched":        onSquares(pinchedCylinder),
		"hemisphere":     onSquares(hemisphere),
		"twisted":        onSquares(twistedBeam),
		"curved beam":    onSquares(curvedBeam),
		"cook":           onSquares(cook),
		"LE1":            onSquares(ellipticMembrane),
		"LE2":            onSquares(cylinderPatch),
		"hypar":          onSquares(clampedHypar),
		"hypar growth":   onSquares(hyparGrowth),
		"bent cylinder":  onSquares(bentCylinder),
		"arch":           onSquares(archUnderPressure),
		"arch on feet":   onSquares(archOnFeet),
		"flow strip":     onSquares(flowStrip(0)),
		"flow arch":      onSquares(flowStrip(30)),
		"tee":            onSquares(teeBeam),
		"rib below":      onSquares(ribbedPlate(true)),
		"rib concentric": onSquares(ribbedPlate(false)),
		"carved strip":   onSquares(carvedStrip),
	}
}

// plateProblems are flat plates.
func plateProblems() map[string]check {
	clamped, supported := supports{'c', 'c'}, supports{'s', 's'}
	return map[string]check{
		"square supported": onSquares(squarePlate(supported)),
		"square clamped":   onSquares(squarePlate(clamped)),
		"square two free":  onSquares(squarePlate(supports{'s', 'f'})),
		"long supported":   onSquares(longPlate(supported)),
		"long clamped":     onSquares(longPlate(clamped)),
		"skew":             onSquares(skewPlate),
		"disc clamped":     onOwnMesh(discPlate(true)),
		"disc supported":   onOwnMesh(discPlate(false)),
		"wood thin":        onSquares(woodPlate(4, supported, rigidInShear(testWood()))),
		"wood supported":   onSquares(woodPlate(4, supported, testWood())),
		"wood thick":       onSquares(woodPlate(30, supported, testWood())),
		"wood clamped":     onSquares(woodPlate(4, clamped, testWood())),
		"wood clamped KL":  onSquares(woodPlate(4, clamped, rigidInShear(testWood()))),
		"wood two clamped": onSquares(woodPlate(4, supports{'c', 's'}, rigidInShear(testWood()))),
		"laminate 10":      onSquares(laminate(10)),
		"laminate 20":      onSquares(laminate(20)),
		"laminate 100":     onSquares(laminate(100)),
	}
}

// onceProblems are those without a mesh to refine.
func onceProblems() map[string]check {
	return map[string]check{
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
	}
}

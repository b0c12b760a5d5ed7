package problem

import (
	"context"
	"fmt"
	"maps"
	"strconv"

	"archload/cases/verify/reference"
)

// Problem is a problem that can be built and solved: on meshes of a given
// density, or once and for all.
type Problem struct {
	Solve  func(ctx context.Context, at Density) (Readings, error)
	Meshed bool  // Solve looks at its density
	Steps  []int // the densities of a trend, each twice the one before
	mesher bool  // on the program's own mesh
	edges  bool  // the density stands for the length of the edges: 32 for the default of 6 mm
}

// Label names a mesh: "16 regular".
func (p *Problem) Label(d Density) string {
	switch {
	case p.edges:
		return "edges " + p.Step(d.N)
	case p.mesher:
		return fmt.Sprintf("%d own mesh", d.N)
	case d.Shake > 0:
		return fmt.Sprintf("%d distorted", d.N)
	}
	return fmt.Sprintf("%d regular", d.N)
}

// Step names a density: its divisions, or the length of its edges.
func (p *Problem) Step(n int) string {
	if p.edges {
		return fmt.Sprintf("%.3g mm", defaultEdge*defaultDensity/float64(n))
	}
	return strconv.Itoa(n)
}

// onSquares is a problem on halved squares.
func onSquares(f func(d Density) (Readings, error)) Problem {
	return Problem{Meshed: true, Steps: []int{4, 8, 16, 32, 64}, Solve: func(_ context.Context, d Density) (Readings, error) { return f(d) }}
}

// onOwnMesh is a problem on the program's own mesh of n edges across.
func onOwnMesh(f func(d Density) (Readings, error)) Problem {
	p := onSquares(f)
	p.mesher = true
	return p
}

// byEdges is a problem of the whole chain, by the length of the edges.
func byEdges(f func(ctx context.Context, at Density) (Readings, error)) Problem {
	return Problem{Meshed: true, Solve: f, Steps: []int{8, 16, 32, 64}, edges: true}
}

// once is a problem without a mesh of its own.
func once(f func() (Readings, error)) Problem {
	return Problem{Solve: func(context.Context, Density) (Readings, error) { return f() }}
}

// All returns all problems by the name that the tables use.
func All() map[string]Problem {
	all := onceProblems()
	maps.Copy(all, shellProblems())
	maps.Copy(all, plateProblems())
	maps.Copy(all, motionProblems())
	all["supported case"] = byEdges(supportedCase)
	all["drum"] = byEdges(drum{side: 6}.solve)
	all["drum, lining"] = byEdges(drum{side: 2, lining: [2]float64{8, 16}}.solve)
	all["drum, blocks"] = byEdges(drum{side: 20, block: 200}.solve)
	all["bedding foot"] = byEdges(beddingFoot)
	all["misfit foot"] = byEdges(misfitFoot)
	all["bridge beam"] = byEdges(bridgeBeam)
	all["sloped foot"] = byEdges(slopedFoot)
	all["saddle arm"] = byEdges(saddleArm)
	all["shear bar"] = byEdges(shearBar)
	all["squeezed body"] = byEdges(solveSqueezedBody)
	all["strung body"] = Problem{Solve: solveStrungBody}
	for _, rim := range []string{"clamped", "hinged"} {
		all["solid "+rim+" tones"] = byEdges(solidTones(rim))
		all["solid "+rim+" P"] = byEdges(solidPlate{rim, "P", true, "carved"}.solve)
		all["solid "+rim+" S"] = byEdges(solidPlate{rim, "S", true, "carved"}.solve)
		all["solid "+rim+" bare"] = byEdges(solidPlate{rim, "P", false, "carved"}.solve)
		all["solid "+rim+" pressed"] = byEdges(pressedSolid(rim))
	}
	return all
}

// shellProblems are shells, panels and ribbed plates.
func shellProblems() map[string]Problem {
	return map[string]Problem{
		"scordelis":      onSquares(scordelisLo),
		"pinched":        onSquares(pinchedCylinder),
		"hemisphere":     onSquares(hemisphere),
		"twisted":        onSquares(twistedBeam),
		"curved beam":    onSquares(curvedBeam),
		"cook":           onSquares(cook),
		"LE1":            onSquares(ellipticMembrane),
		"LE2":            onSquares(cylinderPatch),
		"hypar":          onSquares(clampedHypar),
		"thin hypar":     onSquares(thinHypar),
		"paper hypar":    onSquares(paperHypar),
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
func plateProblems() map[string]Problem {
	clamped, supported := supports{'c', 'c'}, supports{'s', 's'}
	return map[string]Problem{
		"square supported": onSquares(squarePlate(supported)),
		"square clamped":   onSquares(squarePlate(clamped)),
		"square two free":  onSquares(squarePlate(supports{'s', 'f'})),
		"long supported":   onSquares(longPlate(supported)),
		"long clamped":     onSquares(longPlate(clamped)),
		"skew":             onSquares(skewPlate),
		"disc clamped":     onOwnMesh(discPlate(true)),
		"disc supported":   onOwnMesh(discPlate(false)),
		"wood thin":        onSquares(woodPlate(4, supported, reference.RigidInShear(reference.TestWood()))),
		"wood supported":   onSquares(woodPlate(12, supported, reference.TestWood())),
		"wood thick":       onSquares(woodPlate(30, supported, reference.TestWood())),
		"wood clamped":     onSquares(woodPlate(4, clamped, reference.TestWood())),
		"wood clamped 12":  onSquares(woodPlate(12, clamped, reference.TestWood())),
		"wood clamped KL":  onSquares(woodPlate(4, clamped, reference.RigidInShear(reference.TestWood()))),
		"wood two clamped": onSquares(woodPlate(4, supports{'c', 's'}, reference.RigidInShear(reference.TestWood()))),
		"laminate 10":      onSquares(laminate(10)),
		"laminate 20":      onSquares(laminate(20)),
		"laminate 100":     onSquares(laminate(100)),
	}
}

// onceProblems are those without a mesh to refine.
func onceProblems() map[string]Problem {
	return map[string]Problem{
		"patch":           once(patches),
		"spectrum":        once(spectrum),
		"rotations":       once(rotations),
		"shell law":       once(shellLaw),
		"strings":         once(stringForces),
		"relieved bar":    once(relievedBar),
		"rigid ground":    once(rigidGround),
		"cantilever stop": once(cantileverStop),
		"clamped stop":    once(clampedStop),
		"two feet":        once(twoFeet),
		"three point":     once(threePoint),
		"brute force":     once(bruteForce),
		"triangles":       once(triangles),
		"contours":        once(contours),
	}
}

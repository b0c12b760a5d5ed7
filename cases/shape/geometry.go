// Package shape is the shape of a case's plate, before there is any mesh or mechanics.
//
// fitter.go lays out its curves, geometryfit.go fits arch and graduation (bend.go:
// how sharply an arch bends); domain.go says where the triangles are small.
//
// Two things follow from the geometry and cannot be checked when a case is read:
// whether something stands on wood (placecheck.go), and the angles of strings whose
// path over the arch is given (pathover.go). NewGeometry finds those faults and names
// file, line and key as the reading does.
package shape

import (
	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// Geometry is the plate of a case: its plan and its surfaces. It is the first
// stage of an answer and knows no mesh and no mechanics. NewGeometry makes it;
// later stages never change it.
type Geometry struct {
	Case        *cases.Case
	Outline     *plane.Curve
	Holes       []*plane.Curve // mirrored ones too
	Back        *Geometry      // in heights outward from its own gluing surface; nil without a body
	Blocks      []Block        // neck and tail; none without a body
	Plate       mesh.Plate
	RimHeight   float64           // outer surface at the outline above z = 0, mm
	TopAtBridge float64           // outer surface under the bridge's middle above z = 0, mm; 0 without a bridge
	Arch        *surface.Report   // nil for an arch by formula
	Thickness   *surface.Report   // nil for a constant thickness
	Warnings    []*tree.FileError // admitted, but worth a second look

	archRim  float64  // height of the rim that the arch was fitted to, mm
	isBack   bool     // Case is cases.Case.BackAlone
	holeKeys []string // key of each hole
	bends    *bendMap
	told     [4][]*tree.FileError // those of Warnings that each part of the fit gave
}

// The parts of a fit that warn.
const (
	ofThickness = iota
	ofArch
	ofSurfaces // both together
	ofBack
)

// StringForces returns what each string does to the saddle over this arch, in
// the order listed; nil without strings.
func (g *Geometry) StringForces() []cases.StringForce { return g.Case.StringForces(g.TopAtBridge) }

// StringSum returns the string set's resultant over this arch; zero without
// strings or bridge.
func (g *Geometry) StringSum() cases.StringSum { return g.Case.StringSum(g.TopAtBridge) }

// backFault is a fault of the back under its own key.
func backFault(e *tree.FileError) *tree.FileError {
	return &tree.FileError{File: e.File, Line: e.Line, Key: cases.BackKey(e.Key), Err: e.Err}
}

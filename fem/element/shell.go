package element

import (
	"fmt"
	"math"

	"archload/fem/pages"
	"archload/materials"
)

// Rows of strain kept by a Shell. Each row gives one strain measure, constant
// over the triangle, as a linear form in the 18 global degrees of freedom.
const (
	rowStretch = 0  // 5 rows: mean membrane strain xx, yy, xy; mean shear xz, yz (1)
	rowBend    = 5  // 3 rows: curvature xx, yy, xy (1/mm)
	rowDrill   = 8  // 3 rows: deviatoric drilling rotation at the corners (1)
	rowTwist   = 11 // 1 row: b_x,y - b_y,x (1/mm)
	numRows    = 12
)

// Shell is a flat three-node shell triangle with six degrees of freedom a node
// (ux uy uz rx ry rz, rotations right-handed).
//
// Membrane: the ANDES optimal triangle with drilling freedoms (Felippa 2003).
// Plate: linear rotations with the constant part of the MITC3+ shear strain,
// whose bubble is condensed by hand (Lee, Lee, Bathe 2014). Membrane and shear
// are joined through the inverse of one 5x5 compliance, because the turned
// compliance of carved wood couples them; bending uses plane stress alone.
// Corner normals add the strain of the true surface's curvature (Marguerre).
type Shell struct {
	*shape
	stretch [5][5]float64 // N/mm: membrane forces and shear forces per strain
	bend    [3][3]float64 // N mm: moments per curvature
	drill   [3][3]float64 // N/mm: higher-order membrane stiffness per area
	twist   float64       // N mm: stabilising stiffness of the twist row per area
	thick   [3][3]float64 // 1/MPa: strains xz, yz, zz per stress xx, yy, xy
	bubble  [2][2]float64 // mm/N: share of the shear compliance that is bending of the bubble

	eased [numRows]float64 // strains at which the wood is at ease, see Eased
}

// shape is what does not depend on how stiff the wood is.
type shape struct {
	frame   facet
	axes    materials.Axes // of the wood, in global x, y, z
	wood    [3][3]float64  // unit vectors of L, R, T in the facet frame (rows)
	pressed bool           // the wood follows the surface
	rows    [numRows][18]float64
}

// NewShells returns shells to Set.
func NewShells(n int) []Shell {
	shells, shapes := make([]Shell, n), make([]shape, n)
	pages.Wide(shells)
	pages.Wide(shapes)
	for i := range shells {
		shells[i].shape = &shapes[i]
	}
	return shells
}

// NewShell prepares the triangle's frame, strain rows and laws. It returns an
// error if the corners, the thickness, the normals or the compliance are unfit.
func NewShell(in ShellInput) (Shell, error) {
	s := Shell{shape: new(shape)}
	err := s.Set(in)
	return s, err
}

// Set is NewShell in the memory of one of NewShells.
func (s *Shell) Set(in ShellInput) error {
	if !(in.H > 0) || math.IsInf(in.H, 1) {
		return fmt.Errorf("shell: thickness: want > 0 mm, found %g", in.H)
	}
	if err := s.frame.set(&in); err != nil {
		return err
	}
	s.pressed = in.Pressed
	s.axes = s.frame.woodAxes(&in)
	for i := range s.axes {
		s.wood[i] = s.frame.local(s.axes[i])
	}
	if err := s.setWood(&in.Wood); err != nil {
		return err
	}
	s.setRows()
	return nil
}

// SetWood is Set for the triangle of another shell, carved or pressed alike out of other
// wood, whose compliance is given. The two share what does not depend on it.
func (s *Shell) SetWood(like *Shell, wood *materials.Compliance) error {
	s.shape = like.shape
	return s.setWood(wood)
}

// setWood sets the laws of a shape.
func (s *Shell) setWood(wood *materials.Compliance) error {
	turned := wood.Between(s.axes, materials.Axes(s.frame.axes))
	s.setThick(turned)
	return s.setLaws(turned.Reduce())
}

// setRows fills the strain rows in the facet frame and turns them to global
// degrees of freedom.
func (s *Shell) setRows() {
	f := &s.frame
	f.membraneRows(s.rows[rowStretch:rowStretch+3], s.rows[rowDrill:rowDrill+3])
	f.shearRows(s.rows[rowStretch+3 : rowStretch+5])
	f.curvatureRows(s.rows[rowBend:rowBend+3], &s.rows[rowTwist])
	for r := range s.rows {
		f.toGlobal(&s.rows[r])
	}
}

// Area returns the triangle's area, mm².
func (s *Shell) Area() float64 { return s.frame.area }

// Thickness returns the triangle's thickness, mm.
func (s *Shell) Thickness() float64 { return s.frame.h }

// Frame returns the facet frame: e1 (the grain projected on the facet), e2 and
// the outward normal, in global x, y, z (rows, 1).
func (s *Shell) Frame() [3][3]float64 { return s.frame.axes }

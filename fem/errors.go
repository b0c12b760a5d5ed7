package fem

import (
	"errors"
	"fmt"

	"archload/fem/sparse"
)

// UnsupportedError says that the stiffness is singular: where, in which
// freedom, and what is the likely cause.
type UnsupportedError struct {
	At    [3]float64 // mm
	Dof   int        // 0 to 5
	Cause string
	Err   error
}

var dofNames = [6]string{"movement along x", "movement along y", "movement along z",
	"rotation about x", "rotation about y", "rotation about z"}

// Error names the place in plan and the freedom.
func (e *UnsupportedError) Error() string {
	return fmt.Sprintf("the model can move freely (%s at x = %.0f mm, y = %.0f mm): %s",
		dofNames[e.Dof], e.At[0], e.At[1], e.Cause)
}

// Unwrap returns the solver's own error.
func (e *UnsupportedError) Unwrap() error { return e.Err }

func (s *System) explain(err error) error {
	var pe *sparse.PivotError
	if !errors.As(err, &pe) {
		return err
	}
	cause := "nothing holds the plate, or its supports leave a motion free, or a part of it hangs on nothing; give [rim] support or bench supports"
	return &UnsupportedError{At: s.Model.Nodes[pe.Node].P, Dof: pe.Dof, Cause: cause, Err: err}
}

package fem

import (
	"fmt"
)

// UnsupportedError says that the stiffness is singular: where, in which
// freedom.
type UnsupportedError struct {
	At  [3]float64 // mm
	Dof int        // 0 to 5
	Err error
}

var dofNames = [6]string{"movement along x", "movement along y", "movement along z",
	"rotation about x", "rotation about y", "rotation about z"}

// Error names the place in plan and the freedom.
func (e *UnsupportedError) Error() string {
	return fmt.Sprintf("the model can move freely (%s at x = %.0f mm, y = %.0f mm)", dofNames[e.Dof], e.At[0], e.At[1])
}

// Unwrap returns the solver's own error.
func (e *UnsupportedError) Unwrap() error { return e.Err }

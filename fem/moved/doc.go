// Package moved finds the equilibrium of a plate, and of a body that stands on it, on the shape
// that the load has given them.
//
//	contact.Condensed, contact.Problem ─Problem.Solve→ contact.Result
//
// # The equations
//
// The strain energy U(u) of shells and beams is known at movements of any size (fem.Movable): the
// strains are Green's of the corners' plane, the turns of corners against each other, and shear
// gaps, all of which a rigid motion of any size leaves at zero. Equilibrium is
//
//	f(u) = t F + contact forces,   f = dU/du,                            (1)
//
// where a force keeps its size and goes along with the place on which it acts (acting.go). Forces keep their
// direction in space but for those of cords, which follow the lines between what they are tied to: strings of a
// body over its bridge. A body under its own cords is in balance on the moved shape, so that its stand gives
// nothing. The body itself, its pads and their bedding keep their linear laws, and pads press along the
// directions that the unloaded surface gave them, at the places to which the plate's face has gone; the
// contact problem of package contact is solved exactly at every step.
//
// # The iteration
//
// With any stiffness K that is factorised, (1) reads
//
//	K u = t F + contact forces + p(u),   p(u) = K u - f(u),              (2)
//
// a linear contact problem whose plate is pushed by p besides. K is that of the unmoved plate, of which
// factor and compliance under the pads are there already; the step is then a contraction by about the
// share of the second order in the answer, and Anderson's mixing of the last steps makes it quicker still
// (D. G. Anderson, Iterative procedures for nonlinear integral equations, J. ACM 12, 1965; from
// memory). Where it comes to be slow, K is the tangent d²U/du² at the last state, and the step is
// Newton's. Only where that fails is the load raised in parts.
//
// In contact that grips or rubs, the places where pads stick depend on the path. Within a step the push rises
// in proportion with the load, so that the path is that of a plate which has the end's stiffness from the
// outset; what is in balance at the end is exact. A foot with friction is followed over all increments of its
// load on the linear shape, and once more when the push is nearly known; in the steps between only the last
// increment is solved again, from the forces of the step before (friction.Problem.Ends).
package moved

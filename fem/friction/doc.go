// Package friction follows an elastic body that stands on an elastic ground by contact
// with dry friction, while the load on it rises from nothing to full. It knows no plate:
// package contact condenses one to the compliance of the places where they touch, the
// pads.
//
//	Problem ─Follow→ Path, whose Moments are the contact from rest to full load
//
// # In words
//
// A pad that bears holds fast, until it would have to drag with more than its share of
// what it presses with; then it slides, and drags with just that share, against its
// movement. Where it comes to lie in the end depends on the way, so that the load is
// raised in increments. In each a state of rest is searched (newton.go); how much work
// its straight line leaves open tells whether it was short enough (energy.go).
//
// # The problem
//
// Each pad has a row along the normal and two tangential ones, x; guides of the body a
// row each. With the letters of package contact
//
//	w = g + b t + A λ + R ρ,   Rᵀ λ + f t = 0,                             (1)
//	w_n ≥ 0, λ_n ≥ 0, w_n λ_n = 0,                                         (2)
//	|λ_x| ≤ μ λ_n,   λ_x = −μ λ_n w'_x/|w'_x| where w'_x ≠ 0,              (3)
//
// w' being the change with the load: the laws of Signorini and of Coulomb, the latter with
// its disc, not a polygon. C.-A. de Coulomb, 1785; for the discrete problem N. Kikuchi,
// J. T. Oden, Contact Problems in Elasticity, 1988, ch. 10 (from memory).
//
// # An increment
//
// Over an increment w'_x is the whole movement while the pad bears (backward Euler):
// Δ = w_x − o, o where it stood at the beginning, or, of a pad that closes, where it had
// come by then at the pace of the increment before. With a stiffness r for each pad
//
//	p_n = λ_n − r w_n,   p_x = λ_x − r Δ                                   (4)
//
// (2) and (3) say that λ is p brought back to the cone: λ_n = max(p_n, 0), λ_x = p_x
// shortened to μ λ_n (P. Alart, A. Curnier, A mixed formulation for frictional contact
// problems prone to Newton like solution methods, 1991; from memory). It does not matter to
// the answer what r is; it is the inverse of the pad's own compliance. Newton's method on
// this is a guess at what each pad does, and one linear system: with n = p_x/|p_x| and e
// square to it
//
//	open:    λ = 0
//	sticks:  w_n = 0, Δ = 0
//	slides:  w_n = 0, λ_x·n = μ λ_n, Δ·e + c λ_x·e = 0,                    (5)
//	         c = (1 − β)/(β r),  β = μ p_n/|p_x|.
//
// While no pad does another thing than before, the factor of an earlier round is nearly that of this one, and
// a round costs two products with A and two triangles: Newton's method with an old derivative, as long as what is off
// falls to 0.4 of itself. It ends where the forces agree with (4) to 1e-11 of the load. A search that goes in
// circles is damped, then led from another coefficient of friction to the true one.
//
// # Guides
//
// As long as friction holds the body, guides carry nothing. If no increment, however
// short, has a state of rest without them, the foot glides as a whole; from there on the
// guides hold it where it stands. Without friction they do so from the start. So are
// contact's Slip and Grip the two ends, at a coefficient of zero and at a great one.
//
// # Work
//
// The loads' work in an increment from t to t + h is taken along the straight line,
//
//	W = (t + h/2) (c h + bᵀ Δλ + fᵀ Δρ),                                   (6)
//
// and friction takes −½(λ + λ')·Δ from it (Lost), λ and λ' being the forces before and
// after. The same sum over the part of the way on which a pad stands off, ½ λ'_n g of one
// that closes in the increment, say, is no one's work: the straight line lets it bear too
// early. It is taken off W, so that W − Lost is the energy stored, but for rounding. With
// what the law of friction would take, μ ½(λ_n + λ'_n)|Δ|, less Lost, it is
//
//	Loose,                                                                 (7)
//
// the work of which the increments do not tell when it is done. It is zero where the path is
// straight, falls with the square of the increments, and the increments are chosen so
// that it stays below a given share of all work.
package friction

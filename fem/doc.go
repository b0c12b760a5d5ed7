// Package fem is the mechanics of archload: a linear shell-and-beam model of
// the plate, its sparse stiffness, and the unilateral contact of an elastic
// body (the bridge) that stands on it.
//
// Units are mm, N, MPa and N·mm. A node has six freedoms in the order
// ux uy uz rx ry rz (mm and radians, right-hand rule). The path of the data is
//
//	Model ─Assemble→ System ─Prepare→ Prepared ─Condense→ Interface
//	      ─Follow→ State ─Recover→ Result
//
// Prepare factorises once. Condense reduces the plate to the places where the
// bridge may bear; Follow then raises the load from nothing to full and finds
// every event of the contact with small dense algebra alone, so a new relief
// or a new string set never touches the factor again.
//
// # Contact
//
// A pad is one point of the bearing area. Along its normal it cannot pull and
// cannot overlap; its bedding (the wood's own squash) lies between the two
// bodies. With the condensed compliance A = C(plate) + F(bridge) + bedding,
// the bridge's six rigid motions ρ and the relative movement w,
//
//	w = g + b t + A λ + R ρ,   Rᵀ λ + f t = 0,
//	w ≥ 0, λ ≥ 0, w λ = 0 for the normal rows.
//
// This is a mixed linear complementarity problem in the load t; its solution
// is piecewise linear, and Follow walks along it from event to event, the
// parametric form of principal pivoting (R. W. Cottle, J.-S. Pang, R. E.
// Stone, The Linear Complementarity Problem, 1992, ch. 4; from memory). In
// grip a closed pad also keeps the tangential offset it had when it closed.
package fem

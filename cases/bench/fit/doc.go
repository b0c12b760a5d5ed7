// Package fit finds the constants of one piece of wood from what was measured on it.
//
//	bench.File ─plan→ setups, readings ─evaluate→ guesses with slopes ─ways→ belief ─settle→ rest ─report→ Report
//
// # The unknowns
//
// x holds the logarithms of how many times as great each constant of the wood card is, and each
// thickness: caliper readings err, and stiffness goes by the cube. Before anything is measured x is
// normal with mean 0 and the card's scatter (materials.Card.Covariance). Poisson's ratios are counted
// free of the moduli, nuLR sqrt(ER/EL), so that every x is a wood that can exist.
//
// # What the model says
//
// A flat piece is a mesh of shells that bend; a plate of a case is that of package design. Tones y(x) =
// ln f come from package vibration, none missing; with φᵀMφ = 1 their slopes are exact,
//
//	∂ ln f/∂x = φᵀ(∂K/∂x − ω² ∂M/∂x) φ / (2 ω²),   ∂s/∂x = −λᵀ (∂K/∂x) u                  (1)
//
// for the sink s at a gauge, λ being the movement under a unit force there. Both are differences of
// strain energies under the same movements in slightly other wood. What the size of the triangles takes
// off is known from triangles half as large (mend.go).
//
// # The fit
//
// At each step the model is linear about the last one (Gauss and Newton), the readings are taken in one
// after the other, each updating mean and covariance (belief.go), in all likely ways at once (match.go):
// a tone may be any of those that the model has near it, and every reading may be a slip, which costs as
// much as a deviation of about four standard ones. Minus twice the logarithm of the likelihood
// chooses. So a misread tone is left out and named, and tones without a pattern find their shape.
//
// # How far it reaches
//
// Small movement, no air (which takes half a percent or more off the tones of a light thin blank), wood that is the
// same everywhere in the piece. A thin blank is taken for a thin plate (Kirchhoff) unless its file says
// otherwise; what shear may change is added to the ranges (widen.go).
package fit

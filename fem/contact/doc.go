// Package contact follows an elastic body that stands on a plate by unilateral
// contact alone, while the load on it rises from nothing to full. It finds every
// event of the contact exactly, by principal pivoting, with dense algebra the size
// of the bearing area: the plate's factor is used once to condense it.
//
//	fem.Prepared ─Condense→ Condensed ─Problem→ Problem ─Follow(LoadCase)→ State ─Recover→ Result
//
// Another body keeps Condensed, another gap or load keeps Problem (reuse.go). The
// package's examples (tutorial_test.go) walk this line step by step, from four corner
// points to a bridge that stands on a board.
//
// # In words
//
// Without load the body lies down on the places that stand highest: three of them, or
// more where the foot fits tight. As the load grows, plate and body give way, and
// everything moves in proportion, until a place that stood off comes down to touch, or
// one that bore has nothing left to carry. There the proportions change: that pad is
// counted in, or out, and it goes on until the next such event. The stretches are
// straight, so nothing is stepped through and nothing is iterated to a tolerance; what
// the program has to find is the next event, and the new proportions after it.
//
// # The problem
//
// The bearing area is cut into pads. In slip a pad has one row, along the plate's
// normal; in grip two tangential rows follow it; in slip the body's guides add a
// row each. For each row (lcp.go has the letters as they stand here),
//
//	w   relative movement of body and plate along it, mm; of a normal row the gap
//	g   gap before loading, mm; zero for other rows
//	b   relative movement under full load with no force on any row, mm
//	λ   force on it, N; of a normal row above zero where it presses
//	R   movement of the row under the six rigid motions ρ of the body
//	f   resultant of the body's loads at full load, about its first node
//	t   fraction of full load, 0 to 1
//
// and with the compliance A of all rows
//
//	A = C(plate) + F(body, its first node held) + bedding                (1)
//
// the state at the load t obeys
//
//	w = g + b t + A λ + R ρ,                                             (2)
//	Rᵀ λ + f t = 0,                                                      (3)
//	w ≥ 0, λ ≥ 0, w λ = 0   for normal rows,                             (4)
//	w = o                   for tangential rows of pads that stick,      (5)
//	w = 0                   for guides,
//
// a mixed linear complementarity problem. o is where the pad stood sideways when
// it closed. C is condensed from the factor (condense.go), F from the body's own
// (frame.go), and both are added up in problem.go.
//
// # Slack rest
//
// At t = 0 equations (2) to (4) leave ρ free: the body lies down on an uneven
// bearing area. It is lowered straight to the plane q = (z, rx, ry) for which
//
//	g + n_z (1, y, −x) · q ≥ 0 on every pad, the resultant within those that touch.  (6)
//
// This is a linear programme in three unknowns, solved over a small set of pads
// that grows by the worst overlap (slackrest.go). Gaps and ρ count from there.
//
// # The homotopy
//
// Between two events the closed pads stay the same; the rows that carry force are
// the active set 𝒜. Then everything is linear in t, with the rates
//
//	A λ' + R ρ' = −b on 𝒜,   Rᵀ λ' = −f,   λ' = 0 elsewhere.             (7)
//
// The tracer (tracer.go, rates.go, step.go) goes along them until the first open
// pad's gap or the first closed pad's force is used up,
//
//	Δt = min( w/−w' over open pads, λ/−λ' over closed normal rows ),     (8)
//
// and pivots there: of the pads whose next movement would break (4), those at
// λ = 0 with λ' < 0 open and those at w = 0 with w' < 0 close, until none is at
// odds (pivot.go). Many change at once at first; after a few rounds one at a time,
// the lowest number first, which cannot cycle without grip (K. G. Murty's
// least-index rule). This is the parametric principal pivoting of R. W. Cottle,
// J.-S. Pang, R. E. Stone, The Linear Complementarity Problem, 1992, ch. 4 (both
// from memory).
//
// In grip a pad that opens may still carry drag. It fades at constant t, as a
// stage of its own on which other pads may open or close (release.go); the energy
//
//	Lost = −∫ λ dw  over the tangential rows that let go                 (9)
//
// is gone. A pad that would overlap if free and pull if stuck bears and slides: its
// normal row is active, its tangential rows are not. The loads' work is
//
//	W = ∫ t dD,   D = c t + bᵀ λ + fᵀ ρ,                                (10)
//
// c their work coefficient on body and plate by themselves.
//
// # The active set
//
// A on 𝒜 is L Lᵀ, which grows by rows (sparse.ActiveCholesky). Of each side R and b, and
// of the unit vectors E of rows that were released but stay in the factor,
// y = L⁻¹ (side) is kept, so that (7) reduces to
//
//	(YᵀY) (ρ', ν) = −Yᵀ y(b) − (f, 0),   Y = L⁻¹ (R E),                 (11)
//	λ' = −L⁻ᵀ ( y(b) + Y (ρ', ν) ),                                     (12)
//
// six unknowns and one for each released row: ν, by which that row moves backward,
// keeps its force at zero (activeset.go, rigid.go). A row that returns
// drops its ν; too many released rows cost a new factor.
//
// Most events only close pads. The look-ahead takes a batch of such closings into
// the factor at once, gets w' of each stretch from Y alone, and the forces (12) of
// all stretches in one pass; it then goes along as far as no force falls to zero
// (lookahead.go). It is the same path, found with less reading of the factor.
//
// # Friction
//
// A rough foot sticks, slides and opens by Coulomb's law, which is followed in increments
// by package friction on the same equations (2) and (3); rough.go hands the problem over
// and takes the path back. Grip and Slip are its limits for great and for no friction.
//
// # At the end
//
// The last active set is solved once more from (2), (3) and (5), free of the path's
// rounding; what is left of the conditions, and the distance to the path's own
// forces, is State.Residual (residual.go). The history keeps every segment
// (record.go), so that State.At gives any lesser load; and because (2) to (6) are
// homogeneous in g and load together, State.Likewise gives any other size of both.
package contact

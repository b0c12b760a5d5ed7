// Package vibration finds the tones of a plate and of a body that stands on it, and how
// readily both answer to a force that swings. Movements are small, about a loaded state.
//
//	fem.System, contact.Body ─New→ Structure ─Tones→ Tones ─Reduce→ Reduced ─Mobility
//
// Units are mm, N, tonne and s; frequencies of results are in Hz.
//
// # The structure
//
// To the stiffness of the plate's model come that of the body's beams, a spring for each
// row of a pad that bears (its bedding's stiffness), springs at points of the body (the strings),
// and, if asked for, what the membrane forces of the load lend to or take from it:
//
//	K = K(plate) + K(body) + Σ (1/c) r rᵀ + Σ Aᵀ S A + K(N),              (1)
//	M = M(plate) + M(body),
//
// r the relative movement of body and plate along a row, A the movement of a point of the body.
// What is open stays open and what bears stays closed. There is no air.
//
// # Tones
//
// K φ = ω² M φ by package eigen: complete up to a bound, proved by a count. A body that nothing
// holds has free motions, which are found and left out.
//
// # Mobility
//
// With the same loss η in every stiffness the response to a force b e^(iωt) is
//
//	(K (1 + iη) − ω² M) u = b,   v = iω u.                                (2)
//
// It is found in the space of the lowest tones and of the static movements K⁻¹ b under every
// force of interest (residual attachment modes: R. H. MacNeal, A hybrid method of component mode
// synthesis, Computers and Structures 1, 1971; from memory). K and M in that space are
// small; their eigenvectors ψ with the squares λ of frequencies give
//
//	Y(ω) = Σ iω (ψ·b)(ψ·c) / (λ (1 + iη) − ω²),                           (3)
//
// η that of the stiffness in each shape if parts lose differently (the mean of the parts' losses,
// each with its share of the strain energy: what couples shapes through their losses is left out),
// exact at rest, exact at the tones, reciprocal, passive, and with power in equal to power lost,
// because (3) is the exact answer of a structure with these movements alone.
package vibration

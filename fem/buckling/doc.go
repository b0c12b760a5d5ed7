// Package buckling finds at how many times its load a plate, and a body that stands on it, would lose
// its stability by linear theory.
//
//	vibration.Structure, movements under load ─Find→ Modes
//
// The stresses of the load, taken linear, lend the structure a stiffness G (fem.System.AddStressed); G
// grows with the load, the elastic stiffness K stays. At the factor λ a shape φ meets no resistance:
//
//	(K + λ G) φ = 0.                                                     (1)
//
// What bears at the load stays in contact, what is open stays open. A dead force on an arm r above
// the contact plane adds the work F · ½ θ×(θ×r) of its way under a turn θ. The body's own beams lend
// nothing.
//
// Positive factors alone are asked for: the load in its own direction. With a trial σ below the
// lowest of them, K + σ G is definite, and
//
//	(K + σ G) φ = ν K φ,   ν = 1 - σ/λ,                                   (2)
//
// has the positive factors in their order as its lowest eigenvalues, below 1. Package eigen finds
// them and proves by a count that none is missing. σ is found by halving and doubling until K + σ G is
// definite at σ and not at 2 σ.
//
// A linear factor is what is left of a structure that keeps its shape until then. One that bends on its
// way, as an arch does, gives way before: package moved follows it.
package buckling

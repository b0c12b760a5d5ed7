// Package fem is the linear mechanics of shells stiffened by beams: from a model
// to its stiffness, its factor, and the reactions, energies and checks of a
// result. What stands on such a plate by contact is package contact; how a
// vertical load runs through it is package flow; how both swing is package
// vibration; single elements are package element; the factorisation is package
// sparse.
//
// Units are mm, N, MPa and N·mm. A node has six freedoms in the order
// ux uy uz rx ry rz (mm and rad, right-hand rule). The path of the data is
//
//	Model ─Assemble→ System ─Prepare→ Prepared ─Solve→ u ─Result.Recover→ Result
//
// # Assembly
//
// The stiffness is the sum over elements, in their order,
//
//	K = Σ Tᵀ Kₑ T + Σ k r rᵀ,                                            (1)
//
// where Kₑ is an element's stiffness over its own freedoms, T ties them to nodes,
// and the second sum has the springs to ground: spring k lengthens by r · u. A
// shell's corners and the ends of a beam's rigid arms are nodes, so T is a
// choice. The end of a glued beam moves with the face of the plate,
//
//	u(end) = Σ Lᵢ (uᵢ + θᵢ × zeta h/2 n) + ...,                          (2)
//
// and turns with it but for its lean, a rotation about the axis across, which is a
// freedom of a node of its own (Model.AddLean): plate and brace share the face of
// glue, not their shear strains. Where braces are let into each other the three
// rotations are common (Model.AddJoint). Nodes that a beam runs along are kinks of
// the shell's drilling rotation, see element.ShellInput.
//
// Assembly and recovery know elements by the interface Element alone. A new kind
// takes a file in package element, its list in Model, and a tie in ties.go. An
// element that has mass is Massive; System.Mass sums it as (1) sums the stiffness.
//
// # Recovery
//
// With u from K u = f, a held node's reaction is Σ Kₑ uₑ − f, a spring's −k r·u,
// and the energy ½ Σ uₑᵀ Kₑ uₑ is summed by part, the caller's own label. Loads
// and reactions must balance, and stored energy must equal the loads' work: both
// are told relative to the load (Checks), and both are rounding if all is well.
package fem

// Package element holds the mechanics of single finite elements: a flat shell
// triangle of turned orthotropic wood and a straight beam with any section. It
// knows no mesh and no other element: an element is made from its corners, its
// laws and its axes, and answers for its stiffness, its strain energy and its
// forces under given movements of its nodes.
//
// Units are mm, N, MPa. A node has the six freedoms u = (ux uy uz rx ry rz),
// right-handed rotations in rad; an element's freedoms are its nodes', one after
// the other.
//
// # The shell
//
// Shell is a facet with the corners x₁ x₂ x₃, thickness h and area A. Its strains
// are rows B over its 18 freedoms, constant in the triangle, so that
//
//	K = A Σ Bᵀ D B,   energy = ½ uᵀ K u.                                (1)
//
// Membrane: ε = ε(constant strain triangle) + the edges' share of the corners'
// drilling rotations (alpha = 3/2) + the strain by which the true, curved surface
// differs from the facet; beside it three deviatoric drilling rotations with a
// stiffness of their own: the optimal ANDES triangle (C. A. Felippa, A study of
// optimal membrane triangles with drilling freedoms, Computer Methods in Applied
// Mechanics and Engineering 192, 2003, 2125).
//
// Plate: linear rotations, curvature κ, and the constant part of the shear strain
// γ of MITC3+, whose bubble is condensed by hand (Y. Lee, P.-S. Lee, K.-J. Bathe,
// The MITC3+ shell element and its performance, Computers and Structures 138,
// 2014, 12).
//
// Laws: with the wood's compliance turned into the facet and split into in-plane
// (mm), transverse (ss) and coupling (ms) parts,
//
//	(N, Q) = h (S_mm S_ms; S_sm S_ss/k + bubble)⁻¹ (ε, γ),  k = 5/6,    (2)
//	M = h³/12 S_mm⁻¹ κ,                                                 (3)
//
// so that carved wood, whose axes do not lie in the facet, couples membrane and
// shear. Stress at the height zeta h/2 is N/h + 6 zeta M/h² in the facet, with
// the shear 3/2 (1 − zeta²) Q/h, turned into the wood's axes L, R, T.
//
// # The beam
//
// Beam joins two nodes by rigid arms. Rotations are linear along it and the shear
// strain is constant; with the shear compliance
//
//	1/(k G A) + L²/(12 E I)                                             (4)
//
// nodal values are those of Timoshenko's beam for loads at the nodes. What it is
// made of it asks its Section, which answers for its stiffnesses, area and
// outline: a new kind of section is a new type with these methods.
//
// # Movements of any size
//
// PullTo, TangentTo and MovedResultants know both elements at displacements of any size and rotation
// vectors below a full turn (attitude.go). Their strains are measures that a rigid motion leaves at zero
// (shell_moved.go): Green's strain of the plane of the moved corners, for each edge the turn of its far
// corner against its near one in axes that go with them, shear gaps of the moved edges against the moved
// normals, and the drilling of these normals' frames. The strain rows above are their first order, and the
// energy is the same quadratic form (1) of them, so that force and tangent are its exact derivatives. To the
// true surface's bow b along an edge comes its change s: ((b + s)² - b²)/24. StressedTo keeps of the tangent
// what stresses lend to the unmoved element, for loss of stability.
//
// # Mass
//
// Vibration asks for a consistent mass, ∫ ρ Nᵀ N over the element's own interpolation,
// by one more method beside stiffness and energy (shell_mass.go, beam_mass.go).
//
// An element of another kind is a file here and its place in a model there (see
// package fem).
package element

// Package eigen finds the lowest eigenvalues of K x = lambda M x, with their vectors,
// for large sparse symmetric matrices: K positive semidefinite, M positive semidefinite.
// It knows degrees of freedom, but no elements; units are the caller's.
//
// # Method
//
// Block Lanczos with shift and invert ([EricssonRuhe], [GrimesLewisSimon]). With
// A = K + s M definite (s = 0 where K is) the operator A⁻¹ M is symmetric in the product
// xᵀ M y, and its eigenvalues are 1 / (lambda + s): the lowest tones stand alone at the
// far end of its spectrum. A step takes a block of eight vectors through the factor of A
// and through M at once, which costs hardly more than one, and makes the result
// M-orthonormal to the whole basis:
//
//	A⁻¹ M V = V T + Vnext (0 ... 0 B)
//
// The eigenvalues theta of the small T and |B s|, s the last entries of its vectors, say
// how far each has come. When the basis is full it is replaced by the best vectors found
// and goes on ([WuSimon], thick restart). Eight vectors at a time, and orthogonality kept
// to the last vector, find multiple and clustered eigenvalues as often as they occur; start
// vectors come from a fixed sequence, and all sums run in a fixed order, so that the
// answer has the same bits in every run on any number of workers.
//
// # What every answer proves
//
// For each pair the residual is computed anew from K and M themselves,
//
//	y = A⁻¹ (K x - lambda M x),  xᵀ M x = 1:  |yᵀ M y|^½ = eta
//
// and then there is an eigenvalue whose lambda + s differs from that found by no more than
// eta of itself (the residual bound for symmetric operators, [Parlett], 4.5).
//
// That none is missing is proved by counting: K - mu M is factorised as L S Lᵀ at a mu in a
// gap beyond the last value asked for, and by Sylvester's law of inertia the number of
// negative pivots is the number of eigenvalues below mu. No pivots are exchanged; what
// that can do to the count is estimated from the growth of L (sparse.Factor.Growth) as a
// shift of the two eigenvalues beside mu. Where the gap does not leave room for it, another mu
// is taken; where the count is higher than the number found, the search goes on beside
// what is known from new start vectors. No answer comes back without a count that agrees.
//
// # Sources
//
// All cited from memory.
//
//   - [EricssonRuhe] T. Ericsson, A. Ruhe, The spectral transformation Lanczos method for
//     the numerical solution of large sparse generalized symmetric eigenvalue problems,
//     Math. Comp. 35 (1980).
//   - [GrimesLewisSimon] R. G. Grimes, J. G. Lewis, H. D. Simon, A shifted block Lanczos
//     algorithm for solving sparse symmetric generalized eigenproblems, SIAM J. Matrix
//     Anal. Appl. 15 (1994).
//   - [Parlett] B. N. Parlett, The Symmetric Eigenvalue Problem, 1980.
//   - [WuSimon] K. Wu, H. Simon, Thick-restart Lanczos method for large symmetric
//     eigenvalue problems, SIAM J. Matrix Anal. Appl. 22 (2000).
package eigen

// Package sparse solves K x = b for symmetric positive definite matrices of 6 x 6
// blocks on the graph of a plate mesh, by a multifrontal Cholesky factorisation.
// It knows nodes and degrees of freedom, but no elements; units are the caller's.
//
// # Use
//
//	m := sparse.NewMatrix(n, elems)             // pattern
//	m.Add(nodes, k)                             // values, element by element
//	m.Fix(dofs)                                 // supports
//	a, err := sparse.Analyse(m, xy, last)       // once for each pattern
//	f, err := sparse.Factorize(m, a, workers)   // once for each set of values
//	f.Solve(x)                                  // x becomes K⁻¹ x
//	c := f.Compliance(cols)                     // colsᵀ K⁻¹ cols on the last nodes
//	r := f.Reach()                              // K⁻¹ on the last nodes: Compliance of many sets of columns
//
// # Analysis
//
// It works on nodes, a sixth of the degrees of freedom. The order is that of package
// dissection; the last nodes asked for are left out of it and eliminated at the end, with as many
// of those around them as make their rim the shortest: first, by a dissection of their own,
// those that nothing but others of them touches, then the rest, the rim, in one front, the
// root. So a patch of last nodes costs no more than the shortest way round it.
//
// The elimination tree, the structure of L and the supernodes, runs of columns of equal
// structure, are those of package etree.
//
// # Factorisation
//
// Each supernode is a front [Liu92]: a dense matrix of its k pivot rows and the r
// rows below that they couple with. It sums the matrix's entries and the updates of
// its children in the tree, eliminates the pivots and leaves the r x r update:
//
//	        k columns      r columns
//	      +-----------+
//	k rows| D  = L Lᵀ |                        D -> L
//	      +-----------+---------------+
//	r rows| S         | U             |        S -> S L⁻ᵀ
//	      +-----------+---------------+        U -> -S Sᵀ + U of the children
//
// D and S stay as the factor, U lives in a pool of buffers until its parent has
// taken it. All three are stored in panels of eight rows; a column of a panel is
// eight numbers in a row, and the six columns of a node are one tile of 48:
//
//	            node 0            node 1          node 2
//	panel 0  0 8 16 24 32 40 | 48 56 ...     |
//	         1 9 17 25 33 41 | 49 57 ...     |              S: every panel is k wide
//	         . . .           |               |              D, U: whole nodes up to
//	         7 15 23      47 | 55 ...     95 |                the diagonal, 12, 18, 24,
//	panel 1  96 ...          | 144 ...       | 192 ...        36, ... columns
//
// A tile is updated in registers: tile -= (panel, 8 rows) (rows of a node, 6 rows)ᵀ.
// The six rows lie in at most two panels, always in whole pairs, so that both
// operands are read where they stand and nothing is packed. The triangle D is done
// by block columns of 96, S panel by panel against it, U panel by panel against S.
// Solving works on the same layout; many right-hand sides go in eights, as if they
// were one more panel of each front, and so do the columns of Compliance, which
// need the fronts of the last nodes alone, and of these only those that they touch and those
// above.
//
// # Rows in any order
//
// ActiveCholesky factorises a dense symmetric matrix row by row in an order that its
// caller finds out as it goes, and gives the last rows back: the flexibility of an
// active set, such as the pads of a foot that bear. Its caller looks at some rows at every
// step; the others are brought up to date a batch at a time, and those that are hardly
// ever taken only when one of them is. Guesses decide what it costs, never what it gives.
//
// Square factorises a dense matrix without symmetry with the same inner loops, each half as a triangle in panels: the compliance
// of pads that rub.
//
// # Changes here and there
//
// Renew takes from the factor of another matrix the fronts that no changed block enters,
// and eliminates the others anew. Of what a front brings to its parent, which is lost in
// the course of a factorisation, it keeps what changed fronts asked of unchanged ones: a
// second change at the same places finds it. [Matrix.Among] sums the changed blocks alone.
//
// # Same bits
//
// Subtrees run in parallel, and inside a large front groups of panels do. Every
// number is computed by the same operations in the same order whoever does it, so
// the factor has the same bits for any number of workers. Between machines it may
// differ in the last digits: the assembly kernels (AVX2 and FMA, chosen at run
// time) sum in another order than the portable ones, which serve all other
// processors and the build tag purego.
//
// # Failure
//
// A pivot that is not larger than 1e-13 of the matrix's own diagonal is taken for
// zero: elimination goes on as if that degree of freedom were fixed, so that all
// such places are found, and the worst is returned as a *PivotError.
//
// # Sources
//
// All cited from memory.
//
//   - [Liu92] J. W. H. Liu, The multifrontal method for sparse matrix solution:
//     theory and practice, SIAM Review 34 (1992).
package sparse

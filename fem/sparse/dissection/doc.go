// Package dissection orders the nodes of a mesh so that the Cholesky factor of a
// matrix on its graph stays sparse. It knows nodes, edges and plan coordinates, but
// no values.
//
//	g := dissection.NewGraph(n, ptr, col)   // pattern of the lower triangle
//	end := g.Around(last)                   // the nodes to come last, and some that surround them
//	order, rim := g.Order(xy, end)          // place -> node
//
// # Method
//
// Nodes with at most one neighbour left go first, again and again: they join no
// others (degree.go). The rest is ordered by nested dissection (order.go): a cut
// splits the mesh into two halves, whose nodes come first, and a separator, which
// comes last; and so on inside the halves [George]. Pieces of a few nodes are
// ordered by minimum degree.
//
// Candidates for a cut are straight lines in plan, in eight directions (lines.go).
// Counts of the nodes on both sides that touch the other side, for all positions of
// the line at once, give the best position; then the smallest set of nodes that
// touches all edges across becomes the separator (Koenig's theorem, matching by
// [HopcroftKarp]; cover.go). In the largest pieces lines of equal distance along
// edges compete, which follow the density of the mesh round holes and feet. The best
// separators are improved node by node ([FiducciaMattheyses]; refine.go). Where
// nothing gives a good cut, the distance from the rim does.
//
// A separator of s nodes between parts of l and r nodes, l + r = n, scores
//
//	s n² / (4 l r),
//
// its size for equal halves; the least score wins.
//
// Nodes that are to come last, such as those under a foot, are asked for by name. The rim of
// such a patch is in every front outside that touches it; nodes around the patch
// are taken in (around.go) up to the smallest set that parts it from the
// rest, by augmenting paths [FordFulkerson].
//
// The order depends on the graph and the coordinates alone, not on the number of
// processors, though large halves are ordered at the same time.
//
// # Sources
//
// All cited from memory.
//
//   - [George] J. A. George, Nested dissection of a regular finite element mesh,
//     SIAM J. Numer. Anal. 10 (1973).
//   - [HopcroftKarp] J. E. Hopcroft, R. M. Karp, An n^(5/2) algorithm for maximum
//     matchings in bipartite graphs, SIAM J. Comput. 2 (1973).
//   - [FordFulkerson] L. R. Ford, D. R. Fulkerson, Maximal flow through a network,
//     Canadian Journal of Mathematics 8 (1956).
//   - [FiducciaMattheyses] C. M. Fiduccia, R. M. Mattheyses, A linear-time heuristic
//     for improving network partitions, 19th Design Automation Conference (1982).
package dissection

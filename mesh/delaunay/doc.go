// Package delaunay makes constrained Delaunay triangulations in the plane:
// exact predicates, point and segment insertion, regions by parity,
// refinement to a size function and a least angle, and smoothing. It knows
// points and segments only; curves enter through a callback that says where a
// segment is to be split.
//
// Method: incremental insertion with edge flips (C. L. Lawson, 1977), segment
// recovery by flips (S. W. Sloan, Computers & Structures 47, 1993), refinement
// after J. Ruppert (J. Algorithms 18, 1995) with the off-centres of A. Üngör
// (LATIN 2004). All citations from memory.
//
// Everything is deterministic: work goes by index and through first-in,
// first-out queues. Every loop is bounded.
package delaunay

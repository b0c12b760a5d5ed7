// Package hand is stiffness by hand: how far a top gives way at a gauge under a weight that is put on, bare or with its strings and
// bridge on, with what the wood leaves open; and if a gauge has a target, what to change so that it gives way by so much.
//
// Each gauge is answered by the design solved with the weight, less the same without it, both from the same planks. A target is
// met by one change at a time: wood off everywhere, off one of three zones as far from the edge as the others are wide, or
// bars higher or lower. The search goes by derivatives on coarse triangles, ∂s/∂ln of thickness and height; each
// proposal is then checked by a fresh solve on the case's own triangles.
package hand

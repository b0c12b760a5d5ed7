// Package reference sums series and solves plates by Ritz's method: references
// for the published checks that share no code with the finite elements.
// Lengths are mm, forces N, stiffnesses MPa, N and N mm.
package reference

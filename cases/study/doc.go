// Package study asks many questions of one design, or one question of many.
//
//   - compare.go sets designs side by side; ranges.go gives each number and each
//     difference its two ranges, from the wood and from the mesh; scatter.go says
//     which planks there are and what scatters in them, sample.go draws planks
//     by a Latin hypercube (M. D. McKay, R. J. Beckman, W. J. Conover,
//     Technometrics 21, 1979, 239) to check the ranges; answers.go is the same
//     for one design.
//   - try.go stands one bridge with many reliefs on one top (trier.go, trial.go),
//     trialsheet.go is what the bench needs of one of them.
//   - series*.go solve a case for every combination of some keys' values, in an
//     order that reuses tops, and store rows that survive an interruption.
//
// All of it goes through design.Adapt, which computes anew only what differs.
// Nothing here makes sentences: see package say.
package study

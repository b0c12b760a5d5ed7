// Package verify runs the program's published checks: each sets what the
// program computes beside a value from outside it, a textbook, a paper, a closed
// form, a series or an independent solution.
//
// The values lie as data in testdata/verification, each with its unit, its
// source, how it was obtained, and a tolerance with its reason. The problems
// they belong to are small model builders here, in the units of their source;
// fem does not care. Series and Ritz solutions are summed anew at every run by
// plain Go in series.go and ritz*.go, which share no code with fem.
//
// Shell problems are meshed with halved squares, regular or distorted (inner
// nodes moved by up to 0.22 of the spacing, diagonals drawn by lot), at 16 and
// 32 divisions; with Options.Refine also at 4, 8 and 64, with the observed
// order of convergence.
package verify

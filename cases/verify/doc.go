// Package verify runs the program's published checks: each sets what the
// program computes beside a value from outside it, a textbook, a paper, a closed
// form, a series or an independent solution.
//
// The values lie as data in testdata/verification, each with its unit, its
// source, how it was obtained, and a tolerance with its reason. The problems
// they belong to are built and solved in package problem.
package verify

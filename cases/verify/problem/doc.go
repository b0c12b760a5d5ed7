// Package problem builds and solves the problems of the published checks: small
// models in the units of their source (fem does not care), and whole case files.
//
// Shell problems are meshed with halved squares, regular or distorted (inner
// nodes moved by up to 0.22 of the spacing, diagonals drawn by lot), at 16 and
// 32 divisions; for a trend also at 4, 8 and 64.
package problem

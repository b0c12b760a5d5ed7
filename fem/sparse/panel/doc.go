// Package panel has the inner loops of dense arithmetic that the solver spends its time in. They work on
// panels: eight rows of a matrix packed column by column, so that a column fills two registers of AVX2. Each
// kernel is written twice, in portable Go (kernel_go.go tells what it computes) and in assembly (AVX2 and FMA);
// the two agree to rounding. The build tag purego leaves the assembly out.
package panel

//go:build !amd64 || purego

package avx

// Has reports whether the kernels in assembly may be used: not here.
func Has() bool { return false }

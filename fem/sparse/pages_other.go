//go:build !linux

package sparse

// wide lays an array on large pages where the system can be asked to.
func wide([]float64) {}

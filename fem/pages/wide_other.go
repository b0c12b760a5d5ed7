//go:build !linux

package pages

// Wide lays an array on large pages where the system can be asked to: not here.
func Wide[T any]([]T) {}

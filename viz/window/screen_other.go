//go:build cgo && !linux

package window

// noScreen would say why there is no display server; here there always is one.
func noScreen() string { return "" }

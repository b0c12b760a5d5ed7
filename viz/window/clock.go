//go:build cgo

package window

// #include <time.h>
import "C"

// processorTime returns what all threads of the program have used, s.
func processorTime() float64 { return float64(C.clock()) / float64(C.CLOCKS_PER_SEC) }

package pages

import (
	"runtime"
	"runtime/debug"
	"syscall"
	"testing"
)

// TestAhead: what is asked for after Ahead hardly faults, though before it nothing free was touched.
func TestAhead(t *testing.T) {
	const some, piece, page = 16 << 20, 64 << 10, 4 << 10
	live := make([]byte, 4*some) // so much may be asked for until it is collected
	debug.FreeOSMemory()
	Ahead()
	collected := collections()
	if Ahead(); collections() != collected {
		t.Error("memory is collected though so much is free as can be asked for")
	}
	before := faults(t)
	var held [][]byte
	for range some / piece {
		v := make([]byte, piece)
		for i := 0; i < piece; i += page {
			v[i] = 1
		}
		held = append(held, v)
	}
	if n := faults(t) - before; n > some/page/4 {
		t.Errorf("%d faults of %d pages, want a quarter at most", n, some/page)
	}
	runtime.KeepAlive(live)
	runtime.KeepAlive(held)
}

// faults is how many pages were touched for the first time so far.
func faults(t *testing.T) int64 {
	var use syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &use); err != nil {
		t.Fatal(err)
	}
	return use.Minflt
}

// collections is how often memory was collected so far.
func collections() uint32 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.NumGC
}

package golden

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/quantity"
)

// goldenTolerance is how far a number may be from the stored one on another
// processor, relative to the greatest of its kind in the case: kernels with
// and without fused multiplication round differently, and the contact's
// linear systems enlarge that. Between the AVX2 kernels and the portable
// ones on one machine the greatest measured was 7e-8.
const goldenTolerance = 1e-6

// goldenFloor is the least magnitude that counts as one, in the unit of the
// number: residuals of 1e-13 are all rounding.
const goldenFloor = 1e-2

// The same processor gives the same bits: go test -run Golden -golden.exact.
var (
	goldenUpdate = flag.Bool("golden.update", false, "write the golden answers anew")
	goldenExact  = flag.Bool("golden.exact", false, "want the golden answers to the last bit")
)

// TestGolden holds the whole JSON of every bundled case, timings left out. It
// says that nothing changed unseen, not that anything is true.
func TestGolden(t *testing.T) {
	infos, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range infos {
		t.Run(info.Name, func(t *testing.T) {
			t.Parallel()
			got := goldenAnswer(t, info.Name)
			file := filepath.Join("testdata", info.Name+".json.gz")
			if *goldenUpdate {
				writeGolden(t, file, got)
				return
			}
			want := readGolden(t, file)
			if *goldenExact && !bytes.Equal(got, want) {
				t.Errorf("not the same bits as %s", file)
			}
			compareGolden(t, got, want)
		})
	}
}

// goldenAnswer solves a bundled case, without a clock, and returns its JSON.
func goldenAnswer(t *testing.T, name string) []byte {
	t.Helper()
	c, err := cases.Open(nil, name)
	if err != nil {
		t.Fatal(err)
	}
	sol, err := design.Solve(t.Context(), c, design.Options{Workers: runtime.NumCPU()})
	if err != nil {
		t.Fatal(err)
	}
	var buf bytes.Buffer
	e := json.NewEncoder(&buf)
	e.SetIndent("", "  ")
	if err := e.Encode(quantity.Summarize(sol)); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// compareGolden wants the same keys and words, and numbers within the
// tolerance of the greatest number at the same keys.
func compareGolden(t *testing.T, got, want []byte) {
	t.Helper()
	var g, w any
	if err := json.Unmarshal(got, &g); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(want, &w); err != nil {
		t.Fatal(err)
	}
	size := map[string]float64{}
	measure(size, "", w)
	worst, faults := 0.0, 0
	differ(size, "", g, w, func(key string, off float64, g, w any) {
		if worst = max(worst, off); off <= goldenTolerance {
			return
		}
		if faults++; faults <= 10 {
			t.Errorf("%s: %v, want %v (off by %.1e of the greatest there)", key, g, w, off)
		}
	})
	t.Logf("greatest deviation %.1e, %d beyond %g", worst, faults, goldenTolerance)
}

// measure collects the greatest magnitude at each key; the places in a list
// count as one key.
func measure(size map[string]float64, key string, v any) {
	switch v := v.(type) {
	case float64:
		size[key] = max(size[key], math.Abs(v))
	case []any:
		for _, e := range v {
			measure(size, key, e)
		}
	case map[string]any:
		for name, e := range v {
			measure(size, key+"."+name, e)
		}
	}
}

// differ tells each pair of values that is not the same; what is no pair of
// numbers is off by an infinite amount.
func differ(size map[string]float64, key string, got, want any, tell func(key string, off float64, got, want any)) {
	switch w := want.(type) {
	case float64:
		if g, ok := got.(float64); ok {
			if g != w {
				tell(key, math.Abs(g-w)/max(size[key], math.Abs(g), goldenFloor), g, w)
			}
			return
		}
	case []any:
		if g, ok := got.([]any); ok && len(g) == len(w) {
			for i := range w {
				differ(size, key, g[i], w[i], tell)
			}
			return
		}
	case map[string]any:
		if g, ok := got.(map[string]any); ok && slices.Equal(slices.Sorted(maps.Keys(g)), slices.Sorted(maps.Keys(w))) {
			for _, name := range slices.Sorted(maps.Keys(w)) {
				differ(size, key+"."+name, g[name], w[name], tell)
			}
			return
		}
	default:
		if got == want {
			return
		}
	}
	tell(key, math.Inf(1), beginning(got), beginning(want))
}

// beginning keeps a value's beginning for a message.
func beginning(v any) string {
	s := fmt.Sprint(v)
	return s[:min(len(s), 120)]
}

func writeGolden(t *testing.T, file string, data []byte) {
	t.Helper()
	var buf bytes.Buffer
	z, err := gzip.NewWriterLevel(&buf, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := z.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, buf.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

func readGolden(t *testing.T, file string) []byte {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

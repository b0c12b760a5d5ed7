//go:build linux && !race

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"
)

// TestMemoryForecast: a solve takes the memory that check has announced, within
// 15 %, with few bars and with many that are let into each other.
func TestMemoryForecast(t *testing.T) {
	grid := filepath.Join(t.TempDir(), "grid.toml")
	if err := os.WriteFile(grid, gridOfBars(), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"bowed-layout", grid} {
		said := outputOf(t, nil, "check", name, "--json", "-")
		var o struct {
			Memory float64 `json:"memory_mb"`
			Nodes  int     `json:"nodes"`
		}
		if err := json.Unmarshal(said, &o); err != nil {
			t.Fatal(err)
		}
		took := 0.0
		outputOf(t, &took, "solve", name)
		t.Logf("%s: %d nodes, %.0f MB announced, %.0f taken", filepath.Base(name), o.Nodes, o.Memory, took)
		if !(math.Abs(o.Memory/took-1) <= 0.15) {
			t.Errorf("%s: check announces %.0f MB, solve takes %.0f", filepath.Base(name), o.Memory, took)
		}
	}
}

// outputOf runs archload, which TestMain has put on the path. If peak is not nil
// it is set to the most memory that was taken, MB: watched from outside, since
// what the system tells of an ended process counts the one that began it too.
func outputOf(t *testing.T, peak *float64, args ...string) []byte {
	t.Helper()
	var out, errs bytes.Buffer
	cmd := exec.Command("archload", args...)
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error)
	go func() { ended <- cmd.Wait() }()
	for {
		select {
		case err := <-ended:
			if err != nil {
				t.Fatalf("%q: %v %s", args, err, errs.String())
			}
			return out.Bytes()
		case <-time.After(5 * time.Millisecond):
			if peak == nil {
				continue
			}
			status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", cmd.Process.Pid))
			if m := regexp.MustCompile(`(?m)^Name:\s*archload$[\s\S]*^VmHWM:\s*(\d+) kB$`).FindSubmatch(status); err == nil && m != nil {
				kB, _ := strconv.ParseFloat(string(m[1]), 64) // digits alone
				*peak = max(*peak, kB*1024/1e6)
			}
		}
	}
}

// gridOfBars is a case with ten bars across and six along, let into each other.
func gridOfBars() []byte {
	var b bytes.Buffer
	b.WriteString("format = 1\nbase = \"first\"\n")
	bar := func(x0, y0, x1, y1 float64) {
		fmt.Fprintf(&b, "[[brace]]\nwood = \"sitka-spruce\"\nline = [[%g, %g], [%g, %g]]\nwidth = 3\nheight = 4\njoined = true\n", x0, y0, x1, y1)
	}
	for i := range 10 {
		y := -90 + 20*float64(i)
		bar(-90, y, 90, y)
	}
	for i := range 6 {
		x := -80 + 32*float64(i)
		bar(x, -95, x, 95)
	}
	return b.Bytes()
}

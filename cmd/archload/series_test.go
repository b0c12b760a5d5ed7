package main

import (
	"bytes"
	"context"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"archload/cases/tree"

	"archload/cases/study"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/cmd/internal/store"
)

// testSeries plans a small series.
func testSeries(t *testing.T, part [2]int) *study.Series { return seriesBy(t, "archload 1", part) }

// seriesBy plans the series of testSeries for a version of the program.
func seriesBy(t *testing.T, program string, part [2]int) *study.Series {
	t.Helper()
	var changes []tree.Change
	for _, text := range []string{"bridge.relief.depth = [0, 0.1, -1, 0.2]", "plate.thickness = [5, 4]"} {
		c, err := tree.ParseChange(text)
		if err != nil {
			t.Fatal(err)
		}
		changes = append(changes, c)
	}
	s, err := study.NewSeries(&disk.Disk{}, "flat-plate", changes, study.SeriesOptions{Refine: 0.25, Part: part, Program: program})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// runFor works on a series until so many rows are done, and says whether it is
// complete.
func runFor(t *testing.T, s *study.Series, dir string, rows int) bool {
	t.Helper()
	st, err := store.Open(&disk.Disk{}, dir, s.Head)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	err = s.Run(ctx, st.Missing(s.Mine()), 2, func(r study.SeriesRow) error {
		if rows--; rows < 0 {
			cancel()
			return ctx.Err()
		}
		return st.Add(r)
	})
	if err == nil {
		err = st.Finish()
	}
	if cerr := st.Close(); cerr != nil {
		t.Fatal(cerr)
	}
	return err == nil
}

func filesOf(t *testing.T, stem string) string {
	t.Helper()
	var out bytes.Buffer
	for _, e := range []string{".jsonl", ".csv"} {
		data, err := os.ReadFile(stem + e)
		if err != nil {
			t.Fatal(err)
		}
		out.Write(data)
	}
	return out.String()
}

// TestSeriesResumes stops a series at random rows, cuts its files at random
// places as a loss of power would, and goes on: the end is the uninterrupted
// one's to the byte.
func TestSeriesResumes(t *testing.T) {
	t.Parallel()
	s := testSeries(t, [2]int{1, 1})
	whole := t.TempDir()
	if !runFor(t, s, whole, 100) {
		t.Fatal("the uninterrupted series did not end")
	}
	want := filesOf(t, filepath.Join(whole, "series"))
	rng := rand.New(rand.NewPCG(1, 6))
	for range 2 {
		dir := t.TempDir()
		stops := 0
		for ; !runFor(t, s, dir, 1+rng.IntN(4)); stops++ {
			for _, e := range []string{".jsonl", ".csv"} {
				name := filepath.Join(dir, "series"+e)
				info, err := os.Stat(name)
				if err != nil {
					t.Fatal(err)
				}
				if err := os.Truncate(name, info.Size()-rng.Int64N(min(info.Size(), 700))); err != nil {
					t.Fatal(err)
				}
			}
			if stops > 100 {
				t.Fatal("the series does not come to an end")
			}
		}
		if got := filesOf(t, filepath.Join(dir, "series")); got != want || stops == 0 {
			t.Errorf("after %d stops:\n%s\nwant\n%s", stops, got, want)
		}
	}
}

// TestSeriesParts: parts put together are the whole to the byte; parts that are
// missing, doubled or of another series are refused.
func TestSeriesParts(t *testing.T) {
	t.Parallel()
	whole := t.TempDir()
	runFor(t, testSeries(t, [2]int{1, 1}), whole, 100)
	var dirs []string
	for i := range 3 {
		dirs = append(dirs, t.TempDir())
		if !runFor(t, testSeries(t, [2]int{i + 1, 3}), dirs[i], 100) {
			t.Fatal("a part did not end")
		}
	}
	join := func(out string, dirs ...string) (int, string) {
		var stdout, stderr bytes.Buffer
		code := run(t.Context(), append([]string{"series", "--join", "-o", out}, dirs...), &stdout, &stderr)
		return code, stderr.String()
	}
	out := t.TempDir()
	if code, says := join(out, dirs...); code != shell.ExitDone {
		t.Fatalf("join: exit status %d: %s", code, says)
	}
	if got, want := filesOf(t, filepath.Join(out, "series")), filesOf(t, filepath.Join(whole, "series")); got != want {
		t.Errorf("parts together\n%s\nwant\n%s", got, want)
	}
	if _, err := os.Stat(filepath.Join(out, "series-map.png")); err != nil {
		t.Error(err)
	}
	cut, other, edited, many := t.TempDir(), t.TempDir(), t.TempDir(), t.TempDir()
	runFor(t, testSeries(t, [2]int{2, 3}), cut, 1)
	runFor(t, seriesBy(t, "archload 2", [2]int{2, 3}), other, 1)
	runFor(t, testSeries(t, [2]int{1, 8}), many, 0)
	data, err := os.ReadFile(filepath.Join(dirs[1], "part-2-of-3.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	lines := bytes.SplitAfter(data, []byte("\n"))
	lines[2] = bytes.Replace(lines[2], []byte(`"checks_failed":""`), []byte(`"checks_failed":"none"`), 1)
	if err := os.WriteFile(filepath.Join(edited, "part-2-of-3.jsonl"), bytes.Join(lines, nil), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		dirs []string
		says string
	}{
		{dirs[:2], "3 of 8 points are missing: part 3/3 has 0 of 3"},
		{[]string{dirs[0], cut, dirs[2]}, "2 of 8 points are missing: part 2/3 has 1 of 3"},
		{append([]string{dirs[1]}, dirs...), "part 2/3 is given twice"},
		{[]string{dirs[0], other, dirs[2]}, "is of another series than " + filepath.Join(dirs[0], "part-1-of-3.jsonl") + " (made by archload 2, not by archload 1)"},
		{[]string{dirs[0], edited, dirs[2]}, "part-2-of-3.jsonl:3: the line is not as it was written"},
		{[]string{many}, "8 of 8 points are missing: part 1/8 has 0 of 1, part 2/8 has 0 of 1"},
		{[]string{t.TempDir()}, "found none in"},
	} {
		into := t.TempDir()
		if code, says := join(into, c.dirs...); code != shell.ExitFaulty || !strings.Contains(says, c.says) || strings.Count(says, "\n") != 1 {
			t.Errorf("join: exit status %d, %q; want %d and %q", code, says, shell.ExitFaulty, c.says)
		}
		if left, err := os.ReadDir(into); err != nil || len(left) > 0 {
			t.Errorf("a refused join left %v, %v", left, err)
		}
	}
	// A folder with the rows of another series stays as it is; one with rows of
	// this series takes the whole.
	taken := t.TempDir()
	runFor(t, seriesBy(t, "archload 2", [2]int{1, 1}), taken, 1)
	before := filesOf(t, filepath.Join(taken, "series"))
	if code, says := join(taken, dirs...); code != shell.ExitFaulty || !strings.Contains(says, "holds the rows of another series (made by archload 2, not by archload 1)") {
		t.Errorf("join over another series: exit status %d, %q", code, says)
	}
	if now := filesOf(t, filepath.Join(taken, "series")); now != before {
		t.Errorf("a refused join changed\n%s\ninto\n%s", before, now)
	}
	begun := t.TempDir()
	runFor(t, testSeries(t, [2]int{1, 1}), begun, 1)
	if code, says := join(begun, dirs...); code != shell.ExitDone {
		t.Errorf("join over rows of the same series: exit status %d, %q", code, says)
	}
}

// TestSeriesCommand runs the command: an interrupt keeps what is done and says
// how to go on; another series is not mixed in.
func TestSeriesCommand(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	call := func(ctx context.Context, args ...string) (int, string, string) {
		var stdout, stderr bytes.Buffer
		code := run(ctx, append([]string{"series"}, args...), &stdout, &stderr)
		return code, stdout.String(), stderr.String()
	}
	args := []string{"first", "--linear", "--refine", "0.25", "--change", "bridge.relief.depth = [0, -1]", "-o", dir}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	code, stdout, stderr := call(ctx, args...)
	if code != shell.ExitInterrupted || stdout != "" || !strings.Contains(stderr, "0 of 2 rows are in") {
		t.Errorf("interrupted: exit status %d, %q, %q", code, stdout, stderr)
	}
	code, stdout, stderr = call(t.Context(), args...)
	if code != shell.ExitDone || stderr != "" || !strings.Contains(stdout, "2 points, 1 of them failed") || !strings.Contains(stdout, "point 2 (-1) failed: --change:1:") {
		t.Errorf("exit status %d, %q, %q", code, stdout, stderr)
	}
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"first", "--refine", "0.25", "--change", "bridge.relief.depth = [0]", "-o", dir}, "holds the rows of another series"},
		{[]string{"first"}, "want at least one --change"},
		{[]string{"first", "--change", "x"}, "want KEY = VALUES"},
		{[]string{"first", "--change", "plate.thicknes = [1]"}, "did you mean"},
		{[]string{"first", "--change", "plate.thickness = [5]", "--part", "1"}, "want I/N"},
		{[]string{"first", "--change", "plate.thickness = [5]", "--part", "1/2x"}, "want I/N"},
		{[]string{"--join", "x"}, "want a folder for the whole series"},
		{[]string{"--join", "x", "--change", "plate.thickness = [5]", "-o", dir}, "without --change"},
	} {
		code, _, stderr := call(t.Context(), c.args...)
		if code != shell.ExitFaulty || !strings.Contains(stderr, c.says) || strings.Count(stderr, "\n") != 1 {
			t.Errorf("%q: exit status %d, %q; want %d and %q", c.args, code, stderr, shell.ExitFaulty, c.says)
		}
	}
}

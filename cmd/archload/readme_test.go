package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"archload/cmd/internal/shell"
)

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// block returns the README's first fenced block of a language behind a mark.
func block(t *testing.T, text, mark, language string) string {
	t.Helper()
	_, rest, found := strings.Cut(text, mark)
	_, rest, fenced := strings.Cut(rest, "```"+language+"\n")
	body, _, closed := strings.Cut(rest, "\n```")
	if !found || !fenced || !closed {
		t.Fatalf("README: no %s block behind %q", language, mark)
	}
	return body
}

// TestReadmeCase solves the first case that a newcomer types.
func TestReadmeCase(t *testing.T) {
	t.Parallel()
	file := filepath.Join(t.TempDir(), "mine.toml")
	body := block(t, readme(t), "Save this as `mine.toml`", "toml")
	if n := strings.Count(body, "\n") + 1; n != 12 {
		t.Errorf("the README's first case has %d lines, want 12", n)
	}
	if err := os.WriteFile(file, []byte(body+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	if got := run(t.Context(), []string{"solve", file, "--refine", "0.25"}, &stdout, &stderr); got != shell.ExitDone {
		t.Errorf("the README's first case: exit status %d, want %d: %s", got, shell.ExitDone, stderr.String())
	}
}

// TestReadmeOutput compares the output that the README shows with the
// program's: the words in full from the left, numbers to 5 % and a unit of
// their last digit, places of the worst values not at all, because a symmetric
// plate has two.
func TestReadmeOutput(t *testing.T) {
	t.Parallel()
	text := readme(t)
	for _, c := range []struct {
		mark string
		args []string
	}{
		{"<!-- archload solve first -->", []string{"solve", "first"}},
		{"<!-- archload series first -->", []string{"series", "first", "--change", "plate.thickness = 4..6 by 0.5", "-o", t.TempDir()}},
		{"<!-- archload relief course-guitar -->", []string{"relief", "course-guitar"}},
		{"<!-- archload compare course-guitar course-guitar-treble -->", []string{"compare", "course-guitar", "course-guitar-treble"}},
	} {
		shown := block(t, text, c.mark, "text")
		var stdout, stderr bytes.Buffer
		if got := run(t.Context(), c.args, &stdout, &stderr); got != shell.ExitDone {
			t.Fatalf("archload %s: exit status %d: %s", strings.Join(c.args, " "), got, stderr.String())
		}
		for line := range strings.Lines(shown + "\n") {
			if line = strings.TrimRight(line, "\n"); !prints(t, stdout.String(), line) {
				t.Errorf("README shows %q, archload %s prints no such line", line, strings.Join(c.args, " "))
			}
		}
	}
}

// prints says whether output has a line that begins like the one shown.
func prints(t *testing.T, output, shown string) bool {
	t.Helper()
	want, is := numbers(t, shown), words(shown)
	for line := range strings.Lines(output) {
		if printed := words(line); printed != is && !strings.HasPrefix(printed, is+" ") {
			continue
		}
		like := true
		for i, got := range numbers(t, line)[:len(want)] {
			like = like && math.Abs(want[i].value-got.value) <= 0.05*math.Abs(got.value)+want[i].step
		}
		if like {
			return true
		}
	}
	return false
}

func places() *regexp.Regexp { return regexp.MustCompile(`\(-?\d+, -?\d+\)`) }
func digits() *regexp.Regexp { return regexp.MustCompile(`-?\d+(\.\d+)?`) }

// words is a line without its numbers.
func words(line string) string {
	return strings.Join(strings.Fields(digits().ReplaceAllString(places().ReplaceAllString(line, "()"), "0")), " ")
}

// number is a number as it is written.
type number struct {
	value float64
	step  float64 // one in its last digit
}

func numbers(t *testing.T, line string) []number {
	t.Helper()
	var out []number
	for _, s := range digits().FindAllString(places().ReplaceAllString(line, ""), -1) {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		_, fraction, _ := strings.Cut(s, ".")
		out = append(out, number{v, math.Pow10(-len(fraction))})
	}
	return out
}

// TestReadmeCommands checks that every command the README names exists.
func TestReadmeCommands(t *testing.T) {
	root := newRoot()
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile("(?m)(?:`|^go run ./cmd/)archload ([a-z]+)").FindAllStringSubmatch(readme(t), -1) {
		seen[m[1]] = true
		if cmd, _, err := root.Find([]string{m[1]}); err != nil || cmd == root {
			t.Errorf("README names archload %s: no such command", m[1])
		}
	}
	for _, cmd := range root.Commands() {
		if !seen[cmd.Name()] {
			t.Errorf("README does not name archload %s", cmd.Name())
		}
	}
}

// TestReadmePictures checks that the pictures are there and small.
func TestReadmePictures(t *testing.T) {
	links := regexp.MustCompile(`!\[[^\]]+\]\(([^)]+)\)`).FindAllStringSubmatch(readme(t), -1)
	if len(links) != 7 {
		t.Errorf("README shows %d pictures, want 7", len(links))
	}
	for _, m := range links {
		info, err := os.Stat(filepath.Join("../..", m[1]))
		if err != nil {
			t.Error(err)
		} else if info.Size() > 400_000 { // in all their colours: with fewer a legend shows two greens where there are three
			t.Errorf("%s: %d bytes, want at most 400000", m[1], info.Size())
		}
	}
}

package main

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing/fstest"

	"archload/cases"
	"archload/cases/keylist"
)

// mutant is a case whose text was changed here and there, with its files.
type mutant struct {
	files fstest.MapFS
	name  string   // of the case among them
	did   []string // what was changed
}

// breeder makes mutants: of the bundled cases with the tables they read, and of
// drawn designs.
type breeder struct {
	kin   [][]cases.File // a case and what it reads, the case first
	lines []string       // of all cases, and one for every key there is
}

// newBreeder reads what mutants are made of.
func newBreeder() (*breeder, error) {
	infos, err := cases.Bundled()
	if err != nil {
		return nil, err
	}
	b := &breeder{}
	for _, info := range infos {
		files, err := cases.Copy(info.Name, info.Name)
		if err != nil {
			return nil, err
		}
		b.kin = append(b.kin, files)
		b.lines = append(b.lines, linesOf(string(files[0].Data))...)
	}
	tables, err := keylist.All()
	if err != nil {
		return nil, err
	}
	for _, t := range tables {
		b.lines = append(b.lines, t.Head)
		for _, k := range t.Keys {
			b.lines = append(b.lines, t.Head+"\n"+k.Example)
		}
	}
	return b, nil
}

func linesOf(text string) []string { return strings.Split(text, "\n") }

// breed returns the mutant of a seed: one of a bundled case as often as one of a
// drawn design, changed in one to three places.
func (b *breeder) breed(seed uint64) mutant {
	r := rand.New(rand.NewPCG(seed, 2))
	var files []cases.File
	if r.IntN(2) == 0 {
		w := &writer{r: rand.New(rand.NewPCG(seed, 1)), in: inMM}
		w.all()
		files = []cases.File{{Name: "drawn.toml", Data: []byte(w.String())}}
	} else {
		files = slices.Clone(b.kin[r.IntN(len(b.kin))])
	}
	m := mutant{files: fstest.MapFS{}, name: files[0].Name}
	for range 1 + r.IntN(3) {
		f := &files[0]
		if r.IntN(3) == 0 {
			f = &files[r.IntN(len(files))]
		}
		c := changes[r.IntN(len(changes))]
		lines := linesOf(string(f.Data))
		at := r.IntN(len(lines))
		f.Data = []byte(strings.Join(c.do(r, b, lines, at), "\n"))
		m.did = append(m.did, fmt.Sprintf("%s at %s:%d", c.name, f.Name, at+1))
	}
	for _, f := range files {
		m.files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return m
}

// change is one way in which a text goes wrong, or otherwise than meant, at a
// line.
type change struct {
	name string
	do   func(r *rand.Rand, b *breeder, lines []string, at int) []string
}

var (
	numbers = regexp.MustCompile(`-?\d+(\.\d+)?(e-?\d+)?`)
	words   = regexp.MustCompile(`"[^"]*"`)
	heads   = regexp.MustCompile(`^[a-z_.]+`)
)

// changes are all ways. Numbers go wrong most, as they do under the hand, so they
// have three.
var changes = []change{
	{"another number", func(r *rand.Rand, _ *breeder, lines []string, at int) []string {
		return replaced(r, numbers, lines, at, func(old string) string { return wrongNumber(r, old) })
	}},
	{"the sign turned", func(r *rand.Rand, _ *breeder, lines []string, at int) []string {
		return replaced(r, numbers, lines, at, func(old string) string {
			if s, negative := strings.CutPrefix(old, "-"); negative {
				return s
			}
			return "-" + old
		})
	}},
	{"ten times or a tenth", func(r *rand.Rand, _ *breeder, lines []string, at int) []string {
		return replaced(r, numbers, lines, at, func(old string) string { return old + []string{"0", "e1", "e-1", "e2"}[r.IntN(4)] })
	}},
	{"a line less", func(_ *rand.Rand, _ *breeder, lines []string, at int) []string { return slices.Delete(lines, at, at+1) }},
	{"a line twice", func(_ *rand.Rand, _ *breeder, lines []string, at int) []string {
		return slices.Insert(lines, at, lines[at])
	}},
	{"two lines changed about", func(r *rand.Rand, _ *breeder, lines []string, at int) []string {
		to := r.IntN(len(lines))
		lines[at], lines[to] = lines[to], lines[at]
		return lines
	}},
	{"a line of another case", func(r *rand.Rand, b *breeder, lines []string, at int) []string {
		return slices.Insert(lines, at, b.lines[r.IntN(len(b.lines))])
	}},
	{"another word", func(r *rand.Rand, b *breeder, lines []string, at int) []string {
		return replaced(r, words, lines, at, func(string) string {
			if all := words.FindAllString(strings.Join(b.lines, "\n"), -1); r.IntN(3) > 0 {
				return all[r.IntN(len(all))]
			}
			return []string{`""`, `"\u0000"`, `"../x.csv"`, `"5 lb"`, `"1e999 mm"`, `"-0 in"`, `"` + strings.Repeat("ä", 300) + `"`}[r.IntN(7)]
		})
	}},
	{"another key", func(r *rand.Rand, b *breeder, lines []string, at int) []string {
		return replaced(r, heads, lines, at, func(string) string { return heads.FindString(b.lines[r.IntN(len(b.lines))]) })
	}},
	{"a letter", func(r *rand.Rand, _ *breeder, lines []string, at int) []string {
		letters := []rune(lines[at])
		odd := []rune("\"'[]{}=,;.#\\ \t\r\x00\x1b“0aµ")
		if len(letters) == 0 {
			lines[at] = string(odd[r.IntN(len(odd))])
			return lines
		}
		letters[r.IntN(len(letters))] = odd[r.IntN(len(odd))]
		lines[at] = string(letters)
		return lines
	}},
	{"the end missing", func(_ *rand.Rand, _ *breeder, lines []string, at int) []string { return lines[:at+1] }},
	{"a cell more or less", func(r *rand.Rand, _ *breeder, lines []string, at int) []string {
		cells := strings.Split(lines[at], ",")
		i := r.IntN(len(cells))
		if r.IntN(2) == 0 {
			cells = slices.Delete(cells, i, i+1)
		} else {
			cells = slices.Insert(cells, i, cells[i])
		}
		lines[at] = strings.Join(cells, ",")
		return lines
	}},
}

// wrongNumber is what may stand where a number should.
func wrongNumber(r *rand.Rand, old string) string {
	odd := []string{"0", "-0.0", "1e-9", "1e9", "1e308", "-1e308", "nan", "inf", "1e-320", "9223372036854775808", "true",
		"\"" + old + "\"", "\"" + old + " in\"", "[" + old + "]", "{}", "[]", strings.ReplaceAll(old, ".", ","), "3/16", old + "1", "25 1/2"}
	return odd[r.IntN(len(odd))]
}

// replaced puts something else for one of the places in a line, or in the next
// line that has any, where the pattern is found.
func replaced(r *rand.Rand, pattern *regexp.Regexp, lines []string, at int, with func(old string) string) []string {
	for range lines {
		if found := pattern.FindAllStringIndex(lines[at], -1); len(found) > 0 {
			f := found[r.IntN(len(found))]
			lines[at] = lines[at][:f[0]] + with(lines[at][f[0]:f[1]]) + lines[at][f[1]:]
			return lines
		}
		at = (at + 1) % len(lines)
	}
	return lines
}

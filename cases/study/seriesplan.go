package study

import (
	"regexp"
	"slices"
)

// mostTried is how many combinations are opened to find the files of a series.
const mostTried = 1000

// readAll reads the files of all points and closes the file system. Which
// files a point needs depends on the keys that name things alone, so the others
// stand at their first value meanwhile. Where there are more combinations of
// names than can be opened, each name is tried beside the first ones of the
// others; a point that then needs a file which was not read says so.
func (s *Series) readAll() {
	defer s.files.close()
	points, alone := []int{0}, []int{0}
	step := s.Head.Points
	for _, c := range s.changes {
		step /= len(c.Values) // from one value of this key to the next
		var with []int
		for v, value := range c.Values {
			if v > 0 && !mayName(value.Value) {
				continue
			}
			for _, p := range points {
				with = append(with, p+v*step)
			}
			if v > 0 {
				alone = append(alone, v*step)
			}
		}
		points = with
	}
	if len(points) > mostTried {
		points = alone
	}
	for _, p := range points {
		// A faulty one is a row that says so; its files have been read.
		_, _ = s.open(p)
	}
}

// mayName says whether a value of a key may name a file: a text that is no
// number with a unit, or a list or table with such a text in it.
func mayName(v any) bool {
	switch v := v.(type) {
	case string:
		return !regexp.MustCompile(`^\s*[-+]?([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][-+]?[0-9]+)?(\s*[A-Za-z/°][A-Za-z/0-9]*)?\s*$`).MatchString(v)
	case []any:
		return slices.ContainsFunc(v, mayName)
	case map[string]any:
		for _, e := range v {
			if mayName(e) {
				return true
			}
		}
	}
	return false
}

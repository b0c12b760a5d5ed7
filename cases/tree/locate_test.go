package tree

import (
	"strings"
	"testing"
)

func TestPositions(t *testing.T) {
	doc := strings.Join([]string{
		"format = 1",                     // 1
		"[plate]",                        // 2
		"outline = [",                    // 3
		"  [1, 2], # a comment",          // 4
		"  [3,",                          // 5
		"   4],",                         // 6
		"]",                              // 7
		"thickness = { contours = 'x' }", // 8
		"[plate.arch]",                   // 9
		`formula = { height = 1,`,        // 10
		"  apex = [1, 2] }",              // 11
		"[[brace]]",                      // 12
		"line = [[0, 0], [1, 1]]",        // 13
		"[[brace]]",                      // 14
		"a.b = 2",                        // 15
		"[brace.more]",                   // 16
		"x = 1",                          // 17
		"[wood.'my own']",                // 18
		"like = 'x'",                     // 19
	}, "\r\n")
	got := Positions([]byte(doc))
	for _, c := range []struct {
		key  string
		line int
	}{
		{"format", 1}, {"plate", 2}, {"plate.outline", 3}, {"plate.outline[1]", 4}, {"plate.outline[1][2]", 4},
		{"plate.outline[2]", 5}, {"plate.outline[2][2]", 6}, {"plate.thickness.contours", 8}, {"plate.arch", 9},
		{"plate.arch.formula.height", 10}, {"plate.arch.formula.apex", 11}, {"brace[1]", 12}, {"brace[1].line[2][1]", 13},
		{"brace[2]", 14}, {"brace[2].a.b", 15}, {"brace[2].more", 16}, {"brace[2].more.x", 17}, {`wood."my own".like`, 19},
	} {
		if got[c.key] != c.line {
			t.Errorf("%s at line %d, want %d", c.key, got[c.key], c.line)
		}
	}
}

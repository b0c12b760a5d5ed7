package bench

import (
	"strconv"
	"strings"
)

// Pattern is how many lines stand still in a tone.
type Pattern struct {
	Across int  // lines that run across the length: met on the way along it
	Along  int  // lines that run along it
	Ring   bool // one closed line instead
}

// The trade's names of patterns.
const (
	PatternTwist  = "twist"
	PatternAlong  = "along"
	PatternAcross = "across"
	PatternRing   = "ring"
)

// ReadPattern reads a pattern's name, or its two counts, "2 1".
func ReadPattern(s string) (p Pattern, ok bool) {
	switch s {
	case PatternTwist:
		return Pattern{Across: 1, Along: 1}, true
	case PatternAlong:
		return Pattern{Across: 2}, true
	case PatternAcross:
		return Pattern{Along: 2}, true
	case PatternRing:
		return Pattern{Ring: true}, true
	}
	parts := strings.Fields(s)
	if len(parts) != 2 {
		return p, false
	}
	a, errA := strconv.Atoi(parts[0])
	b, errB := strconv.Atoi(parts[1])
	p = Pattern{Across: a, Along: b}
	return p, errA == nil && errB == nil && min(a, b) >= 0 && a+b > 1 && max(a, b) < 20
}

// String is the pattern's name where it has one, else its counts.
func (p Pattern) String() string {
	if p == (Pattern{}) {
		return "all in one sense"
	}
	for _, name := range []string{PatternTwist, PatternAlong, PatternAcross, PatternRing} {
		if q, _ := ReadPattern(name); q == p {
			return name
		}
	}
	return strconv.Itoa(p.Across) + " " + strconv.Itoa(p.Along)
}

package motion

import (
	"regexp"
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

// ReadPattern reads a pattern's name, or its two counts, "2 1", with a space, a comma or another sign between them.
func ReadPattern(s string) (p Pattern, ok bool) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case PatternTwist, "twisting", "torsion":
		return Pattern{Across: 1, Along: 1}, true
	case PatternAlong, "lengthwise":
		return Pattern{Across: 2}, true
	case PatternAcross, "crosswise":
		return Pattern{Along: 2}, true
	case PatternRing:
		return Pattern{Ring: true}, true
	}
	counts := regexp.MustCompile(`^\s*\(?\s*(\d{1,2})\s*[ ,;/x×-]\s*(\d{1,2})\s*\)?\s*$`).FindStringSubmatch(s)
	if counts == nil {
		return p, false
	}
	p.Across, _ = strconv.Atoi(counts[1]) // digits alone
	p.Along, _ = strconv.Atoi(counts[2])
	return p, p.Across+p.Along > 1 && max(p.Across, p.Along) < 20
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

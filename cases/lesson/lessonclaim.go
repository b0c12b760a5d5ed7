package lesson

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"archload/cases/quantity"
	"archload/cases/tree"
)

// Claim is what a caption says of a number of the report: words of the
// caption, the number they stand for, and the range in which it must lie for
// the words to be true.
//
// In a lesson file it stands in braces within the text, so that nothing is
// written twice:
//
//	The bridge sinks {0.45 mm = bridge.sink}.
//	That is {a fifth more = bridge.sink / beside:bridge.sink in 1.15..1.25}.
//
// The words before the equals sign are what is read. A number among them must
// agree with the computed one to the digits shown; a percentage stands for a
// hundredth part of it. Words without a number, or about a loose one, say
// their range behind "in".
type Claim struct {
	Words string // as in the caption
	Of    string // the number they stand for, as written

	Least, Most float64 // in the unit of the words: per cent if they say %

	formula *formula
	at      tree.FileError // the text it stands in, as a fault names its place
}

// claimMark finds a claim in a text.
func claimMark() *regexp.Regexp { return regexp.MustCompile(`\{([^{}]*)\}`) }

// shownNumber finds a number among a claim's words.
func shownNumber() *regexp.Regexp { return regexp.MustCompile(`[-+]?\d+(?:\.(\d+))?(\s*%)?`) }

// parseClaims parts a text into what is read and what it claims.
func parseClaims(text string) (plain string, claims []Claim, err error) {
	var b strings.Builder
	rest, mark := text, claimMark()
	for {
		m := mark.FindStringSubmatchIndex(rest)
		if m == nil {
			break
		}
		c, err := parseClaim(rest[m[2]:m[3]])
		if err != nil {
			return text, nil, err
		}
		b.WriteString(rest[:m[0]] + c.Words)
		claims = append(claims, c)
		rest = rest[m[1]:]
	}
	b.WriteString(rest)
	if plain = b.String(); strings.ContainsAny(plain, "{}") {
		return text, nil, fmt.Errorf("want every { to be closed by a }, as in {0.45 mm = bridge.sink}, found %q", text)
	}
	return strings.Join(strings.Fields(plain), " "), claims, nil
}

// parseClaim reads what stands between the braces.
func parseClaim(text string) (Claim, error) {
	words, of, ok := strings.Cut(text, "=")
	c := Claim{Words: strings.Join(strings.Fields(words), " "), Of: strings.TrimSpace(of)}
	if !ok || c.Words == "" || c.Of == "" {
		return c, fmt.Errorf("want {WORDS = NUMBER}, as in {0.45 mm = bridge.sink}, found {%s}", text)
	}
	span := ""
	if i := strings.LastIndex(c.Of, " in "); i >= 0 {
		c.Of, span = strings.TrimSpace(c.Of[:i]), strings.TrimSpace(c.Of[i+4:])
	}
	if err := c.expect(span); err != nil {
		return c, err
	}
	var err error
	if c.formula, err = parseFormula(c.Of); err != nil {
		return c, err
	}
	if strings.Contains(c.Words, "%") {
		c.formula = &formula{op: '*', a: &formula{op: 'n', number: 100}, b: c.formula}
	}
	return c, nil
}

// expect sets the range from what stands behind "in", or from the words.
func (c *Claim) expect(span string) error {
	if span != "" {
		lo, hi, ok := strings.Cut(span, "..")
		var errLo, errHi error
		c.Least, errLo = strconv.ParseFloat(strings.TrimSpace(lo), 64)
		c.Most, errHi = strconv.ParseFloat(strings.TrimSpace(hi), 64)
		if !ok || errLo != nil || errHi != nil || !(c.Least <= c.Most) {
			return fmt.Errorf("%q: want a rising range FROM..TO behind in, found %q", c.Words, span)
		}
		return nil
	}
	found := shownNumber().FindAllStringSubmatch(c.Words, -1)
	if len(found) != 1 {
		return fmt.Errorf("%q: want one number in the words, or a range behind them as in {a fifth more = ... in 1.15..1.25}", c.Words)
	}
	digits, _, _ := strings.Cut(found[0][0], "%")
	v, err := strconv.ParseFloat(strings.TrimSpace(digits), 64)
	if err != nil {
		return fmt.Errorf("%q: %w", c.Words, err)
	}
	half := 0.5 * math.Pow10(-len(found[0][1])) * (1 + 1e-9)
	c.Least, c.Most = v-half, v+half
	return nil
}

// shownNumbers are the numbers among the words of claims, in their order.
func shownNumbers(claims []Claim) (out []float64) {
	for _, c := range claims {
		for _, m := range shownNumber().FindAllString(c.Words, -1) {
			digits, _, _ := strings.Cut(m, "%")
			if v, err := strconv.ParseFloat(strings.TrimSpace(digits), 64); err == nil {
				out = append(out, v)
			}
		}
	}
	return out
}

// Commands are the commands that print the numbers which the step's claims speak of, each once.
func (s *Step) Commands() (out []string) {
	for _, c := range s.Claims {
		for _, r := range c.formula.references() {
			by := r.command()
			if by != "" && !slices.Contains(out, by) {
				out = append(out, by)
			}
		}
	}
	return out
}

// command prints the number; "" if the case itself says it.
func (r lookup) command() string {
	if q, ok := quantity.Find(r.path); ok && r.of == "" && q.Summary == quantity.HeadMotion {
		return "archload solve --linear --motion"
	}
	switch r.of {
	case ofKey:
		return ""
	case ofSeasons:
		return "archload seasons"
	case ofBench:
		return "archload bench"
	case ofMoved:
		return "archload solve"
	}
	return "archload solve --linear"
}

package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"archload/mesh"
)

// svgPen follows the path data of SVG 1.1, section 8.3.
type svgPen struct {
	text   string
	at     int // next byte
	chains []svgChain
	last   byte       // command before, in capitals
	ctrl   mesh.Point // its last control point, for the smooth commands
}

// fault is an error at the place reached.
func (s *svgPen) fault(want string) error {
	found := "its end"
	if s.at < len(s.text) {
		found = strconv.Quote(s.text[s.at:min(s.at+8, len(s.text))])
	}
	return fmt.Errorf("path, character %d: want %s, found %s", s.at+1, want, found)
}

func (s *svgPen) blanks() {
	for s.at < len(s.text) && strings.IndexByte(" \t\r\n\f", s.text[s.at]) >= 0 {
		s.at++
	}
}

// comma passes over blanks with at most one comma, and reports whether there
// was one.
func (s *svgPen) comma() bool {
	s.blanks()
	if s.at < len(s.text) && s.text[s.at] == ',' {
		s.at++
		s.blanks()
		return true
	}
	return false
}

// atNumber reports whether a number stands next.
func (s *svgPen) atNumber() bool {
	return s.at < len(s.text) && strings.IndexByte("+-.0123456789", s.text[s.at]) >= 0
}

// number reads one number of the grammar, in which "1.5.5-3" is three.
func (s *svgPen) number() (float64, error) {
	i := s.at
	digits := func() (n int) {
		for i < len(s.text) && s.text[i] >= '0' && s.text[i] <= '9' {
			i, n = i+1, n+1
		}
		return n
	}
	if i < len(s.text) && (s.text[i] == '+' || s.text[i] == '-') {
		i++
	}
	n := digits()
	if i < len(s.text) && s.text[i] == '.' {
		i++
		n += digits()
	}
	if n == 0 {
		return 0, s.fault("a number")
	}
	if mark := i; i < len(s.text) && s.text[i]|0x20 == 'e' {
		i++
		if i < len(s.text) && (s.text[i] == '+' || s.text[i] == '-') {
			i++
		}
		if digits() == 0 {
			i = mark
		}
	}
	v, err := strconv.ParseFloat(s.text[s.at:i], 64)
	if err != nil || math.Abs(v) > svgFarthest {
		return 0, s.fault(fmt.Sprintf("a number of at most %g", float64(svgFarthest)))
	}
	s.at = i
	return v, nil
}

// flag reads a flag of an arc: one digit that needs no break behind it.
func (s *svgPen) flag() (bool, error) {
	if s.at < len(s.text) && (s.text[s.at] == '0' || s.text[s.at] == '1') {
		s.at++
		return s.text[s.at-1] == '1', nil
	}
	return false, s.fault("0 or 1, a flag of the arc")
}

// numbers reads n numbers.
func (s *svgPen) numbers(n int) ([7]float64, error) {
	var out [7]float64
	for k := range n {
		if k > 0 {
			s.comma()
		}
		v, err := s.number()
		if err != nil {
			return out, err
		}
		out[k] = v
	}
	return out, nil
}

// arcNumbers reads the radii, the turn, two flags and the end of an arc.
func (s *svgPen) arcNumbers() (v [7]float64, large, sweep bool, err error) {
	if v, err = s.numbers(3); err != nil {
		return v, false, false, err
	}
	s.comma()
	if large, err = s.flag(); err != nil {
		return v, false, false, err
	}
	s.comma()
	if sweep, err = s.flag(); err != nil {
		return v, false, false, err
	}
	s.comma()
	end, err := s.numbers(2)
	v[5], v[6] = end[0], end[1]
	return v, large, sweep, err
}

// close ends the subpath; what follows without M begins at its start.
func (s *svgPen) close() {
	s.chains[len(s.chains)-1].closed = true
	s.last = 'Z'
}

// pen returns the subpath to draw on.
func (s *svgPen) pen() *svgChain {
	c := &s.chains[len(s.chains)-1]
	if s.last == 'Z' {
		s.chains = append(s.chains, svgChain{start: c.start})
		c = &s.chains[len(s.chains)-1]
	}
	return c
}

// here returns the current point: after Z the start of the closed subpath.
func (s *svgPen) here() mesh.Point {
	if len(s.chains) == 0 {
		return mesh.Point{}
	}
	c := &s.chains[len(s.chains)-1]
	if s.last == 'Z' {
		return c.start
	}
	return c.end()
}

// svgFarthest is the greatest number admitted in a drawing.
const svgFarthest = 1e7

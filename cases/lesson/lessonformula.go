package lesson

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// formula is an expression over numbers of a report: the four operations,
// parentheses, size by abs(...), how many times as much so many decibels are by times(...), and references.
type formula struct {
	op     byte // n number, r reference, | size, ^ times, or + - * /
	number float64
	ref    lookup
	a, b   *formula
}

// lookup names one number: bridge.sink, beside:bridge.end_sink[1],
// gauges[apex].sink, key:bridge.relief.depth, seasons:seasons[winter].arch_rise,
// bench:wood.board.EL.value.
type lookup struct {
	beside bool   // of the second design
	of     source // where it stands
	path   string
}

// source is where a number stands: the plain answer of a design, or what is written before it.
type source string

// The sources besides the plain answer.
const (
	ofKey     source = "key:"     // the case itself
	ofSeasons source = "seasons:" // what archload seasons says of it
	ofBench   source = "bench:"   // what archload bench says of the step's bench file
	ofMoved   source = "moved:"   // what archload solve says of the shape as it has moved
)

// sources lists what may stand before a path.
func sources() []source { return []source{ofKey, ofSeasons, ofBench, ofMoved} }

// value computes the formula.
func (f *formula) value(look func(lookup) (float64, error)) (float64, error) {
	switch f.op {
	case 'n':
		return f.number, nil
	case 'r':
		return look(f.ref)
	}
	a, err := f.a.value(look)
	if err != nil {
		return 0, err
	}
	switch f.op {
	case '|':
		return math.Abs(a), nil
	case '^': // of movements, 20 dB are ten times
		return math.Pow(10, a/20), nil
	}
	b, err := f.b.value(look)
	if err != nil {
		return 0, err
	}
	switch f.op {
	case '+':
		return a + b, nil
	case '-':
		return a - b, nil
	case '*':
		return a * b, nil
	}
	return a / b, nil
}

// references lists the references of the formula.
func (f *formula) references() []lookup {
	if f == nil {
		return nil
	}
	if f.op == 'r' {
		return []lookup{f.ref}
	}
	return append(f.a.references(), f.b.references()...)
}

// formulaReader reads an expression from the left.
type formulaReader struct {
	whole, rest string
	depth       int
}

// The largest formula: how many characters it may have, and how many
// parentheses and signs may lie in each other.
const (
	longest = 500
	deepest = 32
)

func parseFormula(text string) (*formula, error) {
	p := &formulaReader{whole: text, rest: text}
	if len(text) > longest {
		return nil, fmt.Errorf("want a formula of at most %d characters, found %d", longest, len(text))
	}
	f, err := p.sum()
	if err == nil && p.next() != 0 {
		err = p.fault()
	}
	return f, err
}

func (p *formulaReader) fault() error {
	return fmt.Errorf("want a number of the report, as in bridge.sink or bridge.sink / beside:bridge.sink, found %q", p.whole)
}

// next is the next character that is not a space, 0 at the end.
func (p *formulaReader) next() byte {
	p.rest = strings.TrimLeft(p.rest, " \t\n")
	if p.rest == "" {
		return 0
	}
	return p.rest[0]
}

func (p *formulaReader) sum() (*formula, error) { return p.chain("+-", p.product) }

func (p *formulaReader) product() (*formula, error) { return p.chain("*/", p.factor) }

// chain reads parts joined by one of two operations, from left to right.
func (p *formulaReader) chain(ops string, part func() (*formula, error)) (*formula, error) {
	f, err := part()
	for err == nil && p.next() != 0 && strings.IndexByte(ops, p.next()) >= 0 {
		op := p.next()
		p.rest = p.rest[1:]
		var b *formula
		b, err = part()
		f = &formula{op: op, a: f, b: b}
	}
	return f, err
}

// factor reads a number, a reference, something in parentheses, or either
// with a minus before it.
func (p *formulaReader) factor() (*formula, error) {
	p.depth++
	defer func() { p.depth-- }()
	c := p.next()
	switch {
	case p.depth > deepest:
		return nil, p.fault()
	case c == '(':
		return p.inner()
	case c == '-':
		p.rest = p.rest[1:]
		f, err := p.factor()
		return &formula{op: '-', a: &formula{op: 'n'}, b: f}, err
	case c >= '0' && c <= '9':
		return p.literal()
	case strings.HasPrefix(p.rest, "abs("):
		p.rest = p.rest[3:]
		f, err := p.inner()
		return &formula{op: '|', a: f}, err
	case strings.HasPrefix(p.rest, "times("):
		p.rest = p.rest[5:]
		f, err := p.inner()
		return &formula{op: '^', a: f}, err
	}
	return p.reference()
}

// inner reads what stands in parentheses.
func (p *formulaReader) inner() (*formula, error) {
	p.rest = p.rest[1:]
	f, err := p.sum()
	if err == nil && p.next() != ')' {
		err = p.fault()
	}
	if err == nil {
		p.rest = p.rest[1:]
	}
	return f, err
}

func (p *formulaReader) literal() (*formula, error) {
	n := strings.IndexFunc(p.rest, func(r rune) bool { return !strings.ContainsRune("0123456789.", r) })
	if n < 0 {
		n = len(p.rest)
	}
	v, err := strconv.ParseFloat(p.rest[:n], 64)
	if err != nil {
		return nil, p.fault()
	}
	p.rest = p.rest[n:]
	return &formula{op: 'n', number: v}, nil
}

// reference reads a path and what stands before it; what stands in brackets may hold any
// character but a closing bracket.
func (p *formulaReader) reference() (*formula, error) {
	var r lookup
	p.rest, r.beside = strings.CutPrefix(p.rest, "beside:")
	for _, s := range sources() {
		if rest, ok := strings.CutPrefix(p.rest, string(s)); ok {
			r.of, p.rest = s, rest
			break
		}
	}
	n, inside := 0, false
	for ; n < len(p.rest); n++ {
		c := p.rest[n]
		word := c == '_' || c == '.' || c == '[' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9'
		if !inside && !word {
			break
		}
		inside = c == '[' || inside && c != ']'
		if c == ']' && !inside && n+1 < len(p.rest) && p.rest[n+1] == ']' {
			break
		}
	}
	r.path, p.rest = p.rest[:n], p.rest[n:]
	if r.path == "" || inside {
		return nil, p.fault()
	}
	return &formula{op: 'r', ref: r}, nil
}

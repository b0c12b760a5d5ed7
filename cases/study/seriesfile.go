package study

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"archload/cases"
	"archload/cases/tree"
)

// seriesLine is a line of a series' file: its head or a row, and a sum by which
// a change of it is seen.
type seriesLine struct {
	Series *SeriesHead `json:"series,omitempty"`
	*SeriesRow
	Sum string `json:"sum,omitempty"`
}

// HeadLine is the first line of a series' file.
func (h SeriesHead) HeadLine() ([]byte, error) { return h.lineOf(seriesLine{Series: &h}) }

// Line is a row of a series' file.
func (h SeriesHead) Line(r SeriesRow) ([]byte, error) { return h.lineOf(seriesLine{SeriesRow: &r}) }

func (h SeriesHead) lineOf(l seriesLine) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(l); err != nil {
		return nil, err
	}
	return h.sealed(bytes.TrimSuffix(b.Bytes(), []byte("}\n"))), nil
}

// beforeSum stands between a line and its sum.
const beforeSum = `,"sum":"`

// sealed ends a line, whose closing bracket is left out, with its sum: half of
// the SHA-256 of the series' fingerprint and the line, so that a row of another
// series is not one of this.
func (h SeriesHead) sealed(line []byte) []byte {
	sum := sha256.Sum256(fmt.Appendf(nil, "%s\n%s", h.Fingerprint, line))
	return fmt.Appendf(nil, "%s%s%s\"}\n", line, beforeSum, hex.EncodeToString(sum[:16]))
}

// intact says whether a line, without its end, is as it was written.
func (h SeriesHead) intact(line []byte) bool {
	i := bytes.LastIndex(line, []byte(beforeSum))
	return i >= 0 && bytes.Equal(h.sealed(line[:i]), fmt.Appendf(nil, "%s\n", line))
}

// ReadSeries reads a series' file. A last line that was cut short, as by a
// loss of power, is left out, and a row that is there twice counts once; whole
// is false if there was any such thing. No head at all gives a nil head. A line
// that was changed since it was written is refused.
func ReadSeries(name string, data []byte) (head *SeriesHead, rows []SeriesRow, whole bool, err error) {
	whole = true
	seen := map[int][]byte{}
	for n := 1; len(data) > 0; n++ {
		line, rest, ended := bytes.Cut(data, []byte("\n"))
		data = rest
		var l seriesLine
		bad := json.Unmarshal(line, &l)
		if !ended || bad != nil && len(rest) == 0 {
			return head, rows, false, nil
		}
		fault := func(form string, args ...any) error {
			return &tree.FileError{File: name, Line: n, Err: fmt.Errorf(form, args...)}
		}
		if n == 1 {
			head = l.Series
		}
		if why := l.wrong(n, head, line, bad); why != "" {
			return nil, nil, false, fault("%s", why)
		}
		switch {
		case n == 1:
		case seen[l.Point] != nil && !bytes.Equal(seen[l.Point], line):
			return nil, nil, false, fault("point %d is there twice, with different results", l.Point)
		case seen[l.Point] != nil:
			whole = false
		default:
			seen[l.Point] = line
			rows = append(rows, *l.SeriesRow)
		}
	}
	return head, rows, whole && head != nil, nil
}

// wrong says what is wrong with line n, "" if nothing is; bad is why it could
// not be read.
func (l *seriesLine) wrong(n int, head *SeriesHead, line []byte, bad error) string {
	switch {
	case bad != nil:
		return fmt.Sprintf("not a row of a series: %v", bad)
	case (n == 1) != (l.Series != nil) || (n == 1) == (l.SeriesRow != nil):
		return "want the head of a series on line 1 and a row on each other line"
	case n == 1 && !head.sound():
		return "want the head of a series on line 1, found one that contradicts itself"
	case n > 1 && (l.Point < 1 || l.Point > head.Points):
		return fmt.Sprintf("point: want 1 to %d, found %d", head.Points, l.Point)
	case !head.intact(line):
		return "the line is not as it was written: its sum does not fit; take a row out, and its point is solved again"
	}
	return ""
}

// sound says whether a head's counts agree.
func (h SeriesHead) sound() bool {
	n := 1
	for _, v := range h.Values {
		if n *= len(v); n > mostPoints {
			return false
		}
	}
	i, parts := h.Part[0], h.Part[1]
	return n == h.Points && n > 0 && len(h.Keys) == len(h.Values) && h.Format == cases.Format &&
		i >= 1 && i <= parts && parts <= n && h.Mine == i*n/parts-(i-1)*n/parts
}

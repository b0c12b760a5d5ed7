package tree

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// Change is one key of a case with the values that it shall take in turn.
type Change struct {
	Key    string // "bridge.relief.depth", "brace[1].width"
	Values []ChangeValue
}

// ChangeValue is one value of a key.
type ChangeValue struct {
	Text  string // as a table shows it: 0.05, sitka-spruce
	Value any    // as a TOML file holds it
}

// Number returns the value as a number if it was written as one, with or
// without a unit behind it.
func (v ChangeValue) Number() (float64, bool) {
	switch x := v.Value.(type) {
	case int64:
		return float64(x), true
	case float64:
		return x, true
	case string:
		if m := NumberStart().FindString(x); m != "" {
			f, err := strconv.ParseFloat(m, 64)
			return f, err == nil
		}
	}
	return 0, false
}

// NumberStart finds the number that a text begins with.
func NumberStart() *regexp.Regexp { return numberStart }

var numberStart = regexp.MustCompile(`^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?`)

// mostValues is how many values one key may take.
const mostValues = 100000

// ParseChange reads "key = FROM..TO by STEP", with a unit behind it or not, or
// "key = [a, b, ...]" with values as a case file would have them.
func ParseChange(text string) (Change, error) {
	key, values, ok := strings.Cut(text, "=")
	key, values = strings.TrimSpace(key), strings.TrimSpace(values)
	if !ok || key == "" || values == "" {
		return Change{}, fmt.Errorf("want KEY = VALUES, as in \"bridge.relief.depth = 0..0.4 by 0.05\", found %q", text)
	}
	if _, err := SplitKey(key); err != nil {
		return Change{}, err
	}
	list, err := ParseValues(values)
	if err != nil {
		return Change{}, fmt.Errorf("%s: %w", key, err)
	}
	return Change{Key: key, Values: list}, nil
}

// ParseValues reads the values of a change: a range, a list or one value.
func ParseValues(text string) ([]ChangeValue, error) {
	if strings.Contains(text, "..") && !strings.ContainsAny(text, `"'[`) {
		return parseRange(text)
	}
	var parsed map[string]any
	if err := toml.Unmarshal([]byte("v = "+text), &parsed); err != nil || len(parsed) != 1 {
		return nil, fmt.Errorf("want a range FROM..TO by STEP, or a list [a, b] with names in quotes, found %q", text)
	}
	items, isList := parsed["v"].([]any)
	if !isList {
		items = []any{parsed["v"]}
	}
	if len(items) == 0 {
		return nil, fmt.Errorf("want at least one value, found an empty list")
	}
	var out []ChangeValue
	for _, it := range items {
		v := ChangeValue{Text: ValueWords(it), Value: it}
		if slices.ContainsFunc(out, func(o ChangeValue) bool { return o.Text == v.Text }) {
			return nil, fmt.Errorf("want each value once, found %s twice", v.Text)
		}
		out = append(out, v)
	}
	return out, nil
}

// ValueWords writes a value of a list for a table.
func ValueWords(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case []any:
		parts := make([]string, len(v))
		for i, e := range v {
			parts[i] = ValueWords(e)
		}
		return "[" + strings.Join(parts, " ") + "]"
	case map[string]any:
		var parts []string
		for _, k := range SortedKeys(v) {
			parts = append(parts, k+"="+ValueWords(v[k]))
		}
		return "{" + strings.Join(parts, " ") + "}"
	}
	return fmt.Sprint(v)
}

// parseRange reads "0..0.4 by 0.05 mm".
func parseRange(text string) ([]ChangeValue, error) {
	wrong := fmt.Errorf("want a rising range FROM..TO by STEP, as in 0..0.4 by 0.05 or 0..12 by 3 in, found %q", text)
	m := regexp.MustCompile(`^\s*(\S+?)\s*\.\.\s*(\S+)\s+by\s+([-+0-9.eE]+)\s*(\S*)\s*$`).FindStringSubmatch(text)
	if m == nil {
		return nil, wrong
	}
	var x [3]float64
	for i := range x {
		v, err := strconv.ParseFloat(m[1+i], 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, wrong
		}
		x[i] = v
	}
	from, to, step := x[0], x[1], x[2]
	if !(to >= from && step > 0) {
		return nil, wrong
	}
	n := (to-from)/step + 1e-9
	if n >= mostValues {
		return nil, fmt.Errorf("want at most %d values, found %q", mostValues, text)
	}
	var out []ChangeValue
	for k := range int(n) + 1 {
		v := from + float64(k)*step
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64) // its own output
		words := strconv.FormatFloat(v, 'g', -1, 64)
		if m[4] == "" {
			out = append(out, ChangeValue{Text: words, Value: v})
			continue
		}
		out = append(out, ChangeValue{Text: words + " " + m[4], Value: words + " " + m[4]})
	}
	return out, nil
}

// KeyPart is a name or an entry number, counted from 1.
type KeyPart struct {
	Name  string
	Entry int // 0: a name
}

// keyStep is a name with the dot before it, or the number of an entry.
var keyStep = regexp.MustCompile(`^(?:\.?("[^"]+"|[A-Za-z0-9_-]+)|\[([1-9]\d{0,5})\])`)

// SplitKey takes brace[1].width apart.
func SplitKey(key string) ([]KeyPart, error) {
	var out []KeyPart
	rest := key
	for rest != "" {
		m := keyStep.FindStringSubmatch(rest)
		if m == nil || len(out) == 0 && (m[1] == "" || rest[0] == '.') || len(out) > 0 && m[1] != "" && rest[0] != '.' {
			return nil, fmt.Errorf("want a key as in bridge.relief.depth or brace[1].width, found %q", key)
		}
		if m[1] != "" {
			out = append(out, KeyPart{Name: strings.Trim(m[1], `"`)})
		} else {
			entry, _ := strconv.Atoi(m[2]) // digits alone
			out = append(out, KeyPart{Entry: entry})
		}
		rest = rest[len(m[0]):]
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("want a key as in bridge.relief.depth or brace[1].width, found none")
	}
	return out, nil
}

// KeyValue is one key with the value it shall have.
type KeyValue struct {
	Key   string
	Value ChangeValue
}

// Laid lays keys over others: a key takes the place of the same key and of all
// below it, and comes after those that stay.
func Laid(before []KeyValue, set ...KeyValue) []KeyValue {
	out := slices.Clone(before)
	for _, kv := range set {
		out = append(slices.DeleteFunc(out, func(o KeyValue) bool { return IsWithin(o.Key, kv.Key) }), kv)
	}
	return out
}

// WithKey returns a copy of a tree with one key set; what is not on the way to
// it is shared. alternatives is as for Overlay.
func WithKey(n *Node, parts []KeyPart, key string, value *Node, alternatives func(table string) [][]string) (*Node, error) {
	if len(parts) == 0 {
		if n == nil {
			return value, nil
		}
		return Overlay(value, n, key, alternatives), nil
	}
	p := parts[0]
	if p.Entry > 0 {
		return withEntry(n, parts, key, value, alternatives)
	}
	kids := map[string]*Node{}
	at := *value
	if n != nil {
		at = *n
		if old, ok := n.Val.(map[string]*Node); ok {
			for k, e := range old {
				kids[k] = e
			}
		}
	}
	for _, group := range alternatives(key) {
		if slices.Contains(group, p.Name) {
			DropOthers(kids, alternatives(key), group)
		}
	}
	kid, err := WithKey(kids[p.Name], parts[1:], JoinKey(key, p.Name), value, alternatives)
	if err != nil {
		return nil, err
	}
	kids[p.Name] = kid
	return &Node{Src: at.Src, Line: at.Line, Val: kids}, nil
}

// withEntry is WithKey for an entry of a list.
func withEntry(n *Node, parts []KeyPart, key string, value *Node, alternatives func(table string) [][]string) (*Node, error) {
	var items []*Node
	if n != nil {
		items, _ = n.Val.([]*Node)
	}
	i := parts[0].Entry
	if i > len(items) {
		return nil, fmt.Errorf("no such entry; the case has %d of %s", len(items), key)
	}
	kid, err := WithKey(items[i-1], parts[1:], EntryKey(key, i), value, alternatives)
	if err != nil {
		return nil, err
	}
	items = slices.Clone(items)
	items[i-1] = kid
	return &Node{Src: n.Src, Line: n.Line, Val: items}, nil
}

// Valued returns a value that is known to the program: a number, a name, or a
// truth.
func Valued[T string | float64 | bool](v T) ChangeValue {
	return ChangeValue{Text: ValueWords(v), Value: v}
}

// Lengths returns values as lengths, mm; a bare number is in mm.
func Lengths(values []ChangeValue) ([]float64, error) {
	dim, _ := DimensionOf(Length(0))
	out := make([]float64, len(values))
	for i, v := range values {
		var err error
		switch x := v.Value.(type) {
		case int64:
			out[i], err = dim.Number(float64(x))
		case float64:
			out[i], err = dim.Number(x)
		case string:
			out[i], err = dim.Parse(x)
		default:
			err = fmt.Errorf("want %s, found %s", dim.Wanted(), v.Text)
		}
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

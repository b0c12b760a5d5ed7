package lesson

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/answer"
	"archload/cases/bench/fit"
	"archload/cases/quantity"
	"archload/cases/stability"
	"archload/cases/tree"
)

// Answer is one answered design, at full load, or one bench file, that a lesson's claims
// can be held against.
type Answer struct {
	keys  map[string]string // the case's own values as text
	rep   *answer.Report
	trees map[source]any // reports as JSON has them
}

// newAnswer makes the numbers of a case and its report ready to be
// looked up.
func newAnswer(c *cases.Case, r *answer.Report) (*Answer, error) {
	a := &Answer{keys: textsOf(c), rep: r, trees: map[source]any{}}
	return a, a.add("", r)
}

// add makes the numbers of a report ready to be looked up.
func (a *Answer) add(of source, report any) error {
	data, err := json.Marshal(report)
	if err != nil {
		return err
	}
	var plain any
	err = json.Unmarshal(data, &plain)
	a.trees[of] = plain
	return err
}

// number looks a reference up.
func (a *Answer) number(r lookup) (float64, error) {
	if r.of == ofKey {
		v, ok := numberOf(a.keys, r.path)
		if !ok {
			return 0, fmt.Errorf("key %s is not a number of the case", r.path)
		}
		return v, nil
	}
	if q, ok := quantity.Find(r.path); ok && r.of == "" {
		v := claimed(q, a.rep)
		if !v.Known() {
			return 0, fmt.Errorf("%s cannot be had in this design", q.Name)
		}
		return float64(v), nil
	}
	at := a.trees[r.of]
	for _, part := range pathParts(r.path) {
		switch here := at.(type) {
		case map[string]any:
			at = here[part]
		case []any:
			var err error
			if at, err = entryOf(here, part); err != nil {
				return 0, fmt.Errorf("%s: %w", r.path, err)
			}
		}
	}
	switch v := at.(type) {
	case float64:
		return v, nil
	case bool:
		if v {
			return 1, nil
		}
		return 0, nil
	}
	return 0, fmt.Errorf("%s cannot be had in this design", r.path)
}

// claimed is a quantity as claims have it: a percentage as a part of 1.
func claimed(q quantity.Quantity, r *answer.Report) answer.Num {
	v := q.Get(r)
	if strings.HasPrefix(q.Unit, "%") {
		v /= 100
	}
	return v
}

// numberOf finds the number of a key, or of an entry of a list such as
// load[1].force[3], among resolved keys.
func numberOf(keys map[string]string, key string) (float64, bool) {
	text, ok := keys[key]
	if i := strings.LastIndexByte(key, '['); !ok && i > 0 {
		n, err := strconv.Atoi(strings.TrimSuffix(key[i+1:], "]"))
		items := strings.Split(strings.Trim(keys[key[:i]], "[]"), ", ")
		if err == nil && n >= 1 && n <= len(items) {
			text = items[n-1]
		}
	}
	v, err := strconv.ParseFloat(tree.NumberStart().FindString(text), 64)
	return v, err == nil
}

// textsOf returns the resolved keys of a case with their values as text, and
// below each key that names a wood its stiffness along the grain, MPa, and its
// density, kg/m³: plate.wood.EL, brace[1].wood.density.
func textsOf(c *cases.Case) map[string]string {
	out := map[string]string{}
	for _, s := range cases.Resolved(c) {
		out[s.Key] = s.Value
	}
	for key, card := range c.Cards {
		out[key+".EL"] = strconv.FormatFloat(card.Wood.EL, 'f', -1, 64)
		out[key+".density"] = strconv.FormatFloat(card.Wood.Density, 'f', -1, 64)
	}
	return out
}

// entryOf finds an entry of a list by its number, counted from 1, or its name.
func entryOf(list []any, part string) (any, error) {
	if i, err := strconv.Atoi(part); err == nil && i >= 1 && i <= len(list) {
		return list[i-1], nil
	}
	var names []string
	for _, e := range list {
		if m, ok := e.(map[string]any); ok {
			name, _ := m["name"].(string)
			if name == part {
				return e, nil
			}
			names = append(names, name)
		}
	}
	return nil, fmt.Errorf("no entry %q%s", part, didYouMean(part, names))
}

// pathParts takes bridge.end_sink[1] apart, brackets being parts as well.
func pathParts(path string) []string {
	var out []string
	for path != "" {
		if path[0] == '[' {
			var part string
			part, path, _ = strings.Cut(path[1:], "]")
			out = append(out, part)
			path = strings.TrimPrefix(path, ".")
			continue
		}
		n := strings.IndexAny(path, ".[")
		if n < 0 {
			n = len(path)
		}
		out = append(out, path[:n])
		path = strings.TrimPrefix(path[n:], ".")
	}
	return out
}

// checkNames refuses a claim that names no number of a report, before
// anything is solved. A design that could not be opened is nil.
func (c *Claim) checkNames(s *Step, design, other *cases.Case) error {
	for _, r := range c.formula.references() {
		of := design
		if r.beside {
			of = other
		}
		var err error
		switch {
		case r.beside && s.Beside == "":
			err = errors.New("no second design is shown; want beside = ... in the step")
		case r.of == ofBench && s.Bench == "":
			err = errors.New("no bench file is named; want bench = ... in the step")
		case r.of == ofSeasons && of != nil && of.Season == nil:
			err = errors.New("the case has no seasons; want a table [season] in it, or set in the step")
		case r.of == ofKey && of != nil:
			err = hasNumber(of, r.path)
		case r.of == ofKey, r.of == "" && isQuantity(r.path):
		default:
			err = reportHas(reportType(r.of), pathParts(r.path))
		}
		if err != nil {
			return fmt.Errorf("%q: %s: %w", c.Words, r.path, err)
		}
	}
	return nil
}

// reportType is the report in which a source's numbers stand.
func reportType(of source) reflect.Type {
	switch of {
	case ofSeasons:
		return reflect.TypeFor[aging.SeasonsReport]()
	case ofMoved:
		return reflect.TypeFor[stability.Report]()
	case ofBench:
		return reflect.TypeFor[fit.Report]()
	}
	return reflect.TypeFor[answer.Report]()
}

// isQuantity tells whether a path is the key of a quantity.
func isQuantity(path string) bool {
	_, ok := quantity.Find(path)
	return ok
}

// hasNumber tells whether a key of the case holds a number.
func hasNumber(c *cases.Case, key string) error {
	keys := textsOf(c)
	if _, ok := numberOf(keys, key); ok {
		return nil
	}
	return fmt.Errorf("no number of the case%s", didYouMean(key, tree.SortedKeys(keys)))
}

// reportHas follows a path through the report's types to a number.
func reportHas(t reflect.Type, parts []string) error {
	for _, part := range parts {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		switch t.Kind() {
		case reflect.Slice, reflect.Array, reflect.Map:
			t = t.Elem()
		case reflect.Struct:
			var names []string
			var found reflect.Type
			for _, f := range reflect.VisibleFields(t) {
				name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
				names = append(names, name)
				if name == part {
					found = f.Type
				}
			}
			if found == nil || part == "" {
				return fmt.Errorf("no %q in the report%s", part, didYouMean(part, names))
			}
			t = found
		default:
			return fmt.Errorf("nothing lies below this number; found %q", part)
		}
	}
	if k := t.Kind(); k != reflect.Float64 && k != reflect.Int && k != reflect.Bool {
		return errors.New("not a number itself; want one below it")
	}
	return nil
}

// answers are what the claims of a step are held against; nil where a step has none.
type answers struct{ design, beside, bench *Answer }

// check compares the claim with what was answered. It
// returns what was computed, NaN if that cannot be had, and why the claim does
// not hold; nil if it does.
func (c *Claim) check(a answers) (float64, error) {
	v, err := c.formula.value(func(r lookup) (float64, error) {
		of := a.design
		switch {
		case r.of == ofBench:
			of = a.bench
		case r.beside:
			of = a.beside
		}
		if of == nil {
			return 0, errors.New("no second design is shown")
		}
		return of.number(r)
	})
	if err != nil {
		return math.NaN(), fmt.Errorf("%q: %w", c.Words, err)
	}
	if !(v >= c.Least && v <= c.Most) {
		return v, fmt.Errorf("%q: want %s within %.6g..%.6g, computed %.6g", c.Words, c.Of, c.Least, c.Most, v)
	}
	return v, nil
}

// didYouMean names the known word that the one found resembles.
func didYouMean(found string, known []string) string {
	if like := tree.Nearest(found, known); like != "" {
		return fmt.Sprintf("; did you mean %q?", like)
	}
	return ""
}

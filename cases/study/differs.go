package study

import (
	"slices"

	"archload/cases"
	"archload/cases/design"
)

// KeyDiff is one key of the input with its value in each case.
type KeyDiff struct {
	Key    string   `json:"key"`
	Values []string `json:"values"`
}

// differs lists the keys in which the cases of solutions differ.
func differs(sols []*design.Solution) []KeyDiff {
	cs := make([]*cases.Case, len(sols))
	for i, s := range sols {
		cs[i] = s.Top.Built.Case
	}
	return Differs(cs)
}

// Differs lists the resolved keys whose values are not the same in all cases.
func Differs(cs []*cases.Case) []KeyDiff {
	var keys []string
	values := make([]map[string]string, len(cs))
	for i, c := range cs {
		values[i] = map[string]string{}
		for _, kv := range cases.Resolved(c) {
			if !slices.Contains(keys, kv.Key) {
				keys = append(keys, kv.Key)
			}
			values[i][kv.Key] = kv.Value
		}
	}
	out := []KeyDiff{}
	for _, k := range keys {
		if k == "title" || k == "base" {
			continue
		}
		d := KeyDiff{Key: k}
		same := true
		for i := range cs {
			v, ok := values[i][k]
			if !ok {
				v = "-"
			}
			d.Values = append(d.Values, v)
			same = same && v == d.Values[0]
		}
		if !same {
			out = append(out, d)
		}
	}
	return out
}

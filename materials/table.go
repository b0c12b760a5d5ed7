package materials

import (
	"maps"
	"slices"
	"strings"
)

// fullCard reads a card that must have every elastic constant.
func fullCard(name string, table map[string]any) (Card, error) {
	card := Card{Name: name, Title: name, Sources: map[string]Source{}}
	numbers, fs := readTable(&card, table)
	fs = append(fs, numbers.resolve(0, 0)...)
	slots := card.slots()
	for i, f := range fields() {
		q := numbers[i]
		if q.given {
			*slots[i] = q.value
			card.Sources[f.key] = q.source
		} else if f.need && !fs.have(f.key) {
			fs = append(fs, Fault{Key: f.key, Msg: "missing; want a number of " + f.unit + ", or like = a wood card"})
		}
	}
	if len(fs) > 0 {
		return Card{}, fs.sorted()
	}
	if err := card.Check(); err != nil {
		return Card{}, err
	}
	return card, nil
}

// readTable reads the words of a card into it and returns its numbers.
func readTable(card *Card, table map[string]any) (numbers, Faults) {
	var n numbers
	var fs Faults
	for i, f := range fields() {
		raw, ok := table[f.key]
		if !ok {
			continue
		}
		q, msg := readNumber(raw, forms(i))
		if msg == "" && i >= firstLimit && q.value == 0 && !MayVanish(f.key) {
			msg = "found 0; want > 0 " + f.unit + ", or no such key if it is not known"
		}
		if msg != "" {
			fs = append(fs, Fault{Key: f.key, Msg: msg})
			continue
		}
		n[i] = q
	}
	for _, key := range slices.Sorted(maps.Keys(table)) {
		if slices.Contains(Keys(), key) || key == "like" {
			continue
		}
		if msg := readWords(card, key, table[key]); msg != "" {
			fs = append(fs, Fault{Key: key, Msg: msg})
		}
	}
	return n, fs
}

// MayVanish says whether a value of 0 of a key means that there is nothing of it, and not
// that it is not known.
func MayVanish(key string) bool {
	return strings.HasPrefix(key, "swell_") || strings.HasPrefix(key, "creep_")
}

// readWords takes title, note and uses; it returns what is wrong.
func readWords(card *Card, key string, raw any) string {
	text, isText := raw.(string)
	switch key {
	case "title", "note":
		if !isText || !printable(text) {
			return "found " + show(raw) + "; want one line of text"
		}
		if key == "title" {
			card.Title = text
		} else {
			card.Note = text
		}
	case "uses":
		list, ok := raw.([]any)
		if !ok {
			return "found " + show(raw) + `; want a list such as ["top", "brace"]`
		}
		card.Uses = nil
		for _, item := range list {
			use, ok := item.(string)
			if !ok || !slices.Contains([]string{UseTop, UseBrace, UseSide, UseBridge}, use) {
				return "found " + show(item) + "; want top, brace, side or bridge"
			}
			card.Uses = append(card.Uses, use)
		}
	case "scatter":
		return readScatter(card, raw)
	case "together":
		return readTogether(card, raw)
	default:
		all := append(Keys(), "title", "note", "uses", "like", "scatter", "together")
		if near := nearest(key, all, 3); len(near) > 0 {
			return "unknown key; nearest: " + strings.Join(near, ", ")
		}
		return "unknown key; want " + strings.Join(all, ", ")
	}
	return ""
}

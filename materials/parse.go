package materials

import (
	"errors"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// ParseCard reads one card file. Each value is a plain number or a table that
// keeps its source beside it:
//
//	EL = 11500                                                  # MPa
//	EL = { value = 11500, source = "bending test of the billet" }
//	EL = { moe = 9900, source = "handbook" }                    # EL = 1.10 moe
//	ER = { ratio = 0.078, source = "handbook", mark = "from memory" } # of EL
//	rolling_shear = { ratio = 0.23, source = "handbook" }       # of shear_along
//	density = { specific_gravity = 0.36, source = "handbook" }  # dry mass over volume at 12 % moisture
//
// With like = "sitka-spruce" only what differs is needed. Faults are returned
// all together as Faults.
func ParseCard(name string, data []byte) (Card, error) {
	var table map[string]any
	if err := toml.Unmarshal(data, &table); err != nil {
		var de *toml.DecodeError
		if errors.As(err, &de) {
			line, _ := de.Position()
			return Card{}, Faults{{Key: strings.Join(de.Key(), "."), Line: line, Msg: strings.TrimPrefix(de.Error(), "toml: ")}}
		}
		return Card{}, Faults{{Msg: strings.TrimPrefix(err.Error(), "toml: ")}}
	}
	if format, ok := table["format"]; ok && format != int64(1) {
		return Card{}, Faults{{Key: "format", Msg: "found " + show(format) + "; want 1"}}
	}
	delete(table, "format")
	return FromTable(name, table)
}

// FromTable reads a card from a decoded TOML table, as [wood.NAME] in a case
// file: numbers are int64 or float64, sub-tables map[string]any. The keys are
// those of a card file; see ParseCard.
func FromTable(name string, table map[string]any) (Card, error) {
	like, ok := table["like"]
	if !ok {
		return fullCard(name, table)
	}
	parent, isText := like.(string)
	if !isText {
		return Card{}, Faults{{Key: "like", Msg: "found " + show(like) + "; want the name of a wood card"}}
	}
	base, err := Find(parent)
	if err != nil {
		return Card{}, Faults{{Key: "like", Msg: err.Error()}}
	}
	return likeCard(name, base, table)
}

// likeCard reads a card that starts from another.
func likeCard(name string, base Card, table map[string]any) (Card, error) {
	named := base.clone()
	named.Title = name + ", like " + base.Title
	named.Note = ""
	numbers, fs := readTable(&named, table)
	fs = append(fs, numbers.resolve(base.Wood.EL, base.Strength.ShearL)...)
	if len(fs) > 0 {
		return Card{}, fs.sorted()
	}
	var ch Change
	own := ch.slots()
	for i := range numbers {
		if numbers[i].given {
			*own[i] = &numbers[i].value
		}
	}
	card, err := named.Like(name, ch)
	if err != nil {
		return Card{}, err
	}
	for i, f := range fields() {
		if numbers[i].given {
			card.Sources[f.key] = numbers[i].source
		}
	}
	return card, nil
}

package cases

import (
	"errors"
	"fmt"
	"path"
	"reflect"

	"archload/cases/tree"
	"archload/materials"
)

// Wood is a wood of the case's own, [wood.NAME]: a bundled card with changes
// (like) or all values, with the keys of a card file.
type Wood struct {
	Values map[string]any // as written; quantities in MPa, kg/m³ or 1
}

// woodDimension returns the dimension of a card's number.
func woodDimension(key string) tree.Dimension {
	switch key {
	case "density":
		d, _ := tree.DimensionOf(tree.Density(0))
		return d
	case "nuLR", "nuLT", "nuRT":
		return tree.PlainNumber()
	}
	d, _ := tree.DimensionOf(tree.Stress(0))
	return d
}

// DecodeNode reads a wood of the case's own: a bundled card with what differs, or
// every constant.
func (w *Wood) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	kids, ok := n.Val.(map[string]*tree.Node)
	if !ok {
		d.Fault(n, key, "want a table with like = \"...\" and what differs, or all of EL ... nuRT, found %s", n.What())
		return
	}
	w.Values = map[string]any{}
	numbers := map[string]bool{}
	for _, k := range materials.Keys() {
		numbers[k] = true
	}
	for _, k := range tree.SortedKeys(kids) {
		sub := tree.JoinKey(key, k)
		d.Rep.Places[sub] = kids[k].At()
		_, isTable := kids[k].Val.(map[string]*tree.Node)
		if !numbers[k] || isTable {
			w.Values[k] = Plain(kids[k])
		} else if x := d.Quantity(woodDimension(k), kids[k], sub, `want:">0"`); d.Rep.Clean(sub) {
			w.Values[k] = x
		}
	}
}

// Plain returns a value without its places.
func Plain(n *tree.Node) any {
	switch v := n.Val.(type) {
	case map[string]*tree.Node:
		out := make(map[string]any, len(v))
		for k, e := range v {
			out[k] = Plain(e)
		}
		return out
	case []*tree.Node:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = Plain(e)
		}
		return out
	}
	return n.Val
}

// woodFinder resolves the names of woods.
type woodFinder struct {
	rep   *tree.FaultLog
	own   map[string]*materials.Card // the case's own; nil: faulty
	files map[string]*materials.Card // card files by label; nil: faulty
	cards map[string]materials.Card  // result, by key
	known map[string]materials.Card  // bundled cards found before, by name
}

// findWoods resolves every wood the case names. A name is one of the case's
// own [wood.NAME] tables, a card file beside the file that names it (with the
// ending .toml), or a bundled card.
func (c *Case) findWoods(d *tree.Decoder) {
	r := d.Rep
	f := woodFinder{rep: r, own: map[string]*materials.Card{}, files: map[string]*materials.Card{}, cards: map[string]materials.Card{}, known: keptBy(d).cards}
	for _, name := range tree.SortedKeys(c.Woods) {
		key := tree.JoinKey("wood", name)
		f.own[name] = nil
		if c.Woods[name] == nil || c.Woods[name].Values == nil {
			continue
		}
		card, err := materials.FromTable(name, c.Woods[name].Values)
		if err != nil {
			f.blame(key, r.Find(key), err)
		} else if r.Clean(key) {
			f.own[name] = &card
		}
	}
	f.find("plate.wood", c.Plate.Wood)
	for i, b := range c.Braces {
		f.findOr(tree.EntryKey("brace", i+1)+".wood", b.Wood, "plate.wood")
	}
	if c.Rim.Support == "elastic" {
		f.find("rim.side_wood", c.Rim.SideWood)
	}
	if c.Bridge != nil {
		f.find("bridge.wood", c.Bridge.Wood)
		f.findOr("bridge.saddle_beam.wood", c.Bridge.SaddleBeam.Wood, "bridge.wood")
	}
	c.Cards = f.cards
}

// findOr resolves one name; without one it takes the wood of another key.
func (f *woodFinder) findOr(key, name, other string) {
	if name != "" {
		f.find(key, name)
	} else if card, ok := f.cards[other]; ok {
		f.cards[key] = card
	}
}

// Find resolves one name.
func (f *woodFinder) find(key, name string) {
	if name == "" || !f.rep.Clean(key) {
		return
	}
	card, isOwn := f.own[name]
	if !isOwn && path.Ext(name) == ".toml" {
		card = f.file(key, name)
	} else if !isOwn {
		c, err := f.bundled(name)
		if err != nil {
			f.unknown(key, name, err)
			return
		}
		card = &c
	}
	if card != nil {
		f.cards[key] = *card
	}
}

// bundled finds a bundled card.
func (f *woodFinder) bundled(name string) (materials.Card, error) {
	if card, ok := f.known[name]; ok {
		return card, nil
	}
	card, err := materials.Find(name)
	if err == nil && f.known != nil {
		f.known[name] = card
	}
	return card, err
}

// unknown reports a name that is no wood; a wood of the case's own may be the
// one meant.
func (f *woodFinder) unknown(key, name string, err error) {
	if like := tree.Nearest(name, tree.SortedKeys(f.own)); like != "" {
		f.rep.AddKey(key, "no wood %q; did you mean [wood.%s]?", name, like)
		return
	}
	f.rep.AddKey(key, "%w", err)
}

// file reads a card file beside the file that names it.
func (f *woodFinder) file(key, name string) *materials.Card {
	from := f.rep.Find(key).Src
	_, label := from.Beside(name)
	if card, ok := f.files[label]; ok {
		return card
	}
	f.files[label] = nil
	src, err := tree.OpenBeside(from, name)
	if err != nil {
		f.rep.AddKey(key, "%q: %w", name, err)
		return nil
	}
	f.rep.Order = append(f.rep.Order, src)
	card, err := materials.ParseCard(TrimExt(path.Base(name)), src.Data)
	if err != nil {
		f.blame("", tree.Place{Src: src, Line: 1}, err)
		return nil
	}
	f.files[label] = &card
	return &card
}

// blame reports the faults of a card, each at its key.
func (f *woodFinder) blame(key string, at tree.Place, err error) {
	var faults materials.Faults
	if !errors.As(err, &faults) {
		f.rep.Add(at, key, err)
		return
	}
	lines := map[string]int{}
	if key == "" {
		lines = tree.Positions(at.Src.Data)
	}
	for _, e := range faults {
		sub := e.Key
		where := at
		switch {
		case key != "" && e.Key != "":
			sub = tree.JoinKey(key, e.Key)
			where = f.rep.Find(sub)
			if !f.rep.Clean(sub) {
				continue
			}
		case key != "":
			sub = key
		case e.Line > 0:
			where.Line = e.Line
		case lines[e.Key] > 0:
			where.Line = lines[e.Key]
		}
		f.rep.Add(where, sub, fmt.Errorf("%s", e.Msg))
	}
}

// TrimExt strips a file name's ending.
func TrimExt(name string) string { return name[:len(name)-len(path.Ext(name))] }

// Wood returns the card of the wood that a key names: "plate.wood",
// "brace[1].wood", "bridge.wood" or "rim.side_wood" (of an elastic rim).
func (c *Case) Wood(key string) (materials.Card, error) {
	card, ok := c.Cards[key]
	if !ok {
		return card, c.Fault(key, "the case names no wood here")
	}
	return card, nil
}

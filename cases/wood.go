package cases

import (
	"errors"
	"fmt"
	"path"
	"reflect"

	"archload/materials"
)

// Wood is a wood of the case's own, [wood.NAME]: a bundled card with changes
// (like) or all values, with the keys of a card file.
type Wood struct {
	Values map[string]any // as written; quantities in MPa, kg/m³ or 1
}

// woodDimension returns the dimension of a card's number.
func woodDimension(key string) dimension {
	switch key {
	case "density":
		d, _ := dimensionOf(Density(0))
		return d
	case "nuLR", "nuLT", "nuRT":
		return plainNumber()
	}
	d, _ := dimensionOf(Stress(0))
	return d
}

func (w *Wood) decodeNode(d *decoder, n *node, key string, _ reflect.StructTag) {
	kids, ok := n.val.(map[string]*node)
	if !ok {
		d.fault(n, key, "want a table with like = \"...\" and what differs, or all of EL ... nuRT, found %s", n.what())
		return
	}
	w.Values = map[string]any{}
	numbers := map[string]bool{}
	for _, k := range materials.Keys() {
		numbers[k] = true
	}
	for _, k := range sortedKeys(kids) {
		sub := joinKey(key, k)
		d.rep.places[sub] = kids[k].at()
		_, isTable := kids[k].val.(map[string]*node)
		if !numbers[k] || isTable {
			w.Values[k] = kids[k].plain()
		} else if x := d.quantity(woodDimension(k), kids[k], sub, `want:">0"`); d.rep.clean(sub) {
			w.Values[k] = x
		}
	}
}

// plain returns a value without its places.
func (n *node) plain() any {
	switch v := n.val.(type) {
	case map[string]*node:
		out := make(map[string]any, len(v))
		for k, e := range v {
			out[k] = e.plain()
		}
		return out
	case []*node:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = e.plain()
		}
		return out
	}
	return n.val
}

// woodFinder resolves the names of woods.
type woodFinder struct {
	rep   *faultLog
	own   map[string]*materials.Card // the case's own; nil: faulty
	files map[string]*materials.Card // card files by label; nil: faulty
	cards map[string]materials.Card  // result, by key
	known map[string]materials.Card  // bundled cards found before, by name
}

// findWoods resolves every wood the case names. A name is one of the case's
// own [wood.NAME] tables, a card file beside the file that names it (with the
// ending .toml), or a bundled card.
func (c *Case) findWoods(d *decoder) {
	r := d.rep
	f := woodFinder{rep: r, own: map[string]*materials.Card{}, files: map[string]*materials.Card{}, cards: map[string]materials.Card{}, known: keptBy(d).cards}
	for _, name := range sortedKeys(c.Woods) {
		key := joinKey("wood", name)
		f.own[name] = nil
		if c.Woods[name] == nil || c.Woods[name].Values == nil {
			continue
		}
		card, err := materials.FromTable(name, c.Woods[name].Values)
		if err != nil {
			f.blame(key, r.find(key), err)
		} else if r.clean(key) {
			f.own[name] = &card
		}
	}
	f.find("plate.wood", c.Plate.Wood)
	for i, b := range c.Braces {
		f.findOr(entryKey("brace", i+1)+".wood", b.Wood, "plate.wood")
	}
	if c.Rim.Support == "elastic" {
		f.find("rim.side_wood", c.Rim.SideWood)
	}
	if c.Bridge != nil {
		f.find("bridge.wood", c.Bridge.Wood)
		f.findOr("bridge.saddle_beam.wood", c.Bridge.SaddleBeam.Wood, "bridge.wood")
	}
	c.cards = f.cards
}

// findOr resolves one name; without one it takes the wood of another key.
func (f *woodFinder) findOr(key, name, other string) {
	if name != "" {
		f.find(key, name)
	} else if card, ok := f.cards[other]; ok {
		f.cards[key] = card
	}
}

// find resolves one name.
func (f *woodFinder) find(key, name string) {
	if name == "" || !f.rep.clean(key) {
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
	if like := nearest(name, sortedKeys(f.own)); like != "" {
		f.rep.addKey(key, "no wood %q; did you mean [wood.%s]?", name, like)
		return
	}
	f.rep.addKey(key, "%w", err)
}

// file reads a card file beside the file that names it.
func (f *woodFinder) file(key, name string) *materials.Card {
	from := f.rep.find(key).src
	_, label := from.beside(name)
	if card, ok := f.files[label]; ok {
		return card
	}
	f.files[label] = nil
	src, err := openBeside(from, name)
	if err != nil {
		f.rep.addKey(key, "%q: %w", name, err)
		return nil
	}
	f.rep.order = append(f.rep.order, src)
	card, err := materials.ParseCard(trimExt(path.Base(name)), src.data)
	if err != nil {
		f.blame("", place{src, 1}, err)
		return nil
	}
	f.files[label] = &card
	return &card
}

// blame reports the faults of a card, each at its key.
func (f *woodFinder) blame(key string, at place, err error) {
	var faults materials.Faults
	if !errors.As(err, &faults) {
		f.rep.add(at, key, err)
		return
	}
	lines := map[string]int{}
	if key == "" {
		lines = positions(at.src.data)
	}
	for _, e := range faults {
		sub := e.Key
		where := at
		switch {
		case key != "" && e.Key != "":
			sub = joinKey(key, e.Key)
			where = f.rep.find(sub)
			if !f.rep.clean(sub) {
				continue
			}
		case key != "":
			sub = key
		case e.Line > 0:
			where.line = e.Line
		case lines[e.Key] > 0:
			where.line = lines[e.Key]
		}
		f.rep.add(where, sub, fmt.Errorf("%s", e.Msg))
	}
}

// trimExt strips a file name's ending.
func trimExt(name string) string { return name[:len(name)-len(path.Ext(name))] }

// wood returns the card of the wood that a key names: "plate.wood",
// "brace[1].wood", "bridge.wood" or "rim.side_wood" (of an elastic rim).
func (c *Case) wood(key string) (materials.Card, error) {
	card, ok := c.cards[key]
	if !ok {
		return card, c.Fault(key, "the case names no wood here")
	}
	return card, nil
}

package cases

import (
	"errors"
	"fmt"
	"maps"
	"path"
	"slices"

	"archload/cases/tree"
	"archload/materials"
)

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
	if c.Rim.Sided() {
		f.find("rim.side_wood", c.Rim.SideWood)
	}
	if c.Bodied() && c.Body != nil {
		f.find("body.back.wood", c.Body.Back.Wood)
		f.findOr("body.block_wood", c.Body.BlockWood, "plate.wood")
		for i, b := range c.Body.Back.Braces {
			f.findOr(tree.EntryKey("body.back.brace", i+1)+".wood", b.Wood, "body.back.wood")
		}
	}
	if c.Bridge != nil {
		f.find("bridge.wood", c.Bridge.Wood)
		f.findOr("bridge.saddle_beam.wood", c.Bridge.SaddleBeam.Wood, "bridge.wood")
	}
	for i, p := range c.Posts {
		f.find(tree.EntryKey("post", i+1)+".wood", p.Wood)
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

// find resolves one name.
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

// Wood returns the card of the wood that a key names: "plate.wood",
// "brace[1].wood", "bridge.wood", "rim.side_wood" (where sides hold the edge), "body.back.wood".
func (c *Case) Wood(key string) (materials.Card, error) {
	card, ok := c.Cards[key]
	if !ok {
		return card, c.Fault(key, "the case names no wood here")
	}
	return card, nil
}

// WithCards returns the case with the cards of its woods changed, each in the same way; nil: as it is. A post of a wood
// becomes softer or stiffer as that wood does along the grain.
func (c *Case) WithCards(change func(materials.Card) materials.Card) *Case {
	if change == nil {
		return c
	}
	q := *c
	q.Cards = maps.Clone(c.Cards)
	for key, card := range q.Cards {
		q.Cards[key] = change(card)
	}
	q.Posts = slices.Clone(c.Posts)
	for i := range q.Posts {
		key := tree.EntryKey("post", i+1) + ".wood"
		if was, ok := c.Cards[key]; ok {
			q.Posts[i].Stiffness *= tree.Stiffness(q.Cards[key].Wood.EL / was.Wood.EL)
		}
	}
	return &q
}

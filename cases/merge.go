package cases

import (
	"fmt"
	"path"
	"slices"
	"strings"
)

// alternatives lists the keys of a table that exclude each other: a case that
// writes one of a group takes the others of its base away, so that an arch by
// formula can replace an arch by contours.
func alternatives(table string) [][]string {
	switch table {
	case "plate.arch":
		return [][]string{{"contours"}, {"templates"}, {"points"}, {"formula"}}
	case "plate.thickness":
		return [][]string{{"contours"}, {"templates"}, {"points"}}
	case "strings":
		return [][]string{{"path"}, {"front_angle", "back_angle"}}
	case "strings.path":
		return [][]string{{"nut_height"}, {"neck_angle", "fret_plane", "nut_action"}}
	case "bridge.relief":
		return [][]string{{"stations"}, {"depth", "shape", "ends"}}
	}
	return nil
}

// chain opens a case and its bases and returns the merged tree. seen holds the
// labels of the files that led here. It returns nil when a file of the chain
// cannot be had: what the rest says would then mean little.
func (d *decoder) chain(src *source, seen []string) *node {
	d.rep.order = append(d.rep.order, src)
	top, fault := parse(src)
	if fault != nil {
		d.rep.add(place{src, fault.Line}, "", fault.Err)
		return nil
	}
	d.checkFormat(top)
	b, ok := top.val.(map[string]*node)["base"]
	if !ok {
		return top
	}
	lower, err := d.openBase(src, b)
	seen = append(seen, src.label)
	switch {
	case err != nil:
	case slices.Contains(seen, lower.label):
		err = fmt.Errorf("a case cannot start from itself: %s", strings.Join(append(seen, lower.label), " -> "))
	case len(seen) > maxChain:
		err = fmt.Errorf("want at most %d cases on top of each other", maxChain)
	}
	if err != nil {
		d.rep.add(b.at(), "base", err)
		return nil
	}
	base := d.chain(lower, seen)
	if base == nil {
		return nil
	}
	return overlay(top, base, "", alternatives)
}

// maxChain is the longest chain of bases.
const maxChain = 16

// openBase opens a base case: a file beside the one that names it, or a
// bundled case by its name without ".toml".
func (d *decoder) openBase(from *source, n *node) (*source, error) {
	name, ok := n.val.(string)
	if !ok || name == "" {
		return nil, fmt.Errorf("want the case to start from, found %s", n.what())
	}
	src, err := (*source)(nil), error(nil)
	if path.Ext(name) == ".toml" {
		src, err = openBeside(from, name)
	} else {
		src, err = openBundled(name)
	}
	if err != nil {
		return nil, fmt.Errorf("%q: %w", name, err)
	}
	return src, nil
}

// checkFormat refuses a file of another format.
func (d *decoder) checkFormat(top *node) {
	n, ok := top.val.(map[string]*node)["format"]
	if !ok {
		d.rep.add(top.at(), "format", fmt.Errorf("missing, want format = %d", format))
		return
	}
	if v, ok := n.val.(int64); !ok || v != format {
		d.rep.add(n.at(), "format", fmt.Errorf("want %d, the case format this program reads, found %s", format, n.what()))
	}
}

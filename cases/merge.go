package cases

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"archload/cases/tree"
)

// Alternatives lists the keys of a table that exclude each other: a case that
// writes one of a group takes the others of its base away, so that an arch by
// formula can replace an arch by contours.
func Alternatives(table string) [][]string {
	switch table {
	case "plate.arch", "body.back.arch":
		return [][]string{{"contours"}, {"templates"}, {"points"}, {"formula"}}
	case "plate.thickness", "body.back.thickness":
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

// Chain opens a case and its bases and returns the merged tree. seen holds the
// labels of the files that led here. It returns nil when a file of the chain
// cannot be had: what the rest says would then mean little.
func Chain(d *tree.Decoder, src *tree.Source, seen []string) *tree.Node {
	d.Rep.Order = append(d.Rep.Order, src)
	top, fault := tree.Parse(src)
	if fault != nil {
		d.Rep.Add(tree.Place{Src: src, Line: fault.Line}, "", fault.Err)
		return nil
	}
	checkFormat(d, top)
	b, ok := top.Val.(map[string]*tree.Node)["base"]
	if !ok {
		return top
	}
	lower, err := openBase(src, b)
	seen = append(seen, src.Label)
	switch {
	case err != nil:
	case slices.Contains(seen, lower.Label):
		err = fmt.Errorf("a case cannot start from itself: %s", strings.Join(append(seen, lower.Label), " -> "))
	case len(seen) > maxChain:
		err = fmt.Errorf("want at most %d cases on top of each other", maxChain)
	}
	if err != nil {
		d.Rep.Add(b.At(), "base", err)
		return nil
	}
	base := Chain(d, lower, seen)
	if base == nil {
		return nil
	}
	return tree.Overlay(top, base, "", Alternatives)
}

// maxChain is the longest chain of bases.
const maxChain = 16

// openBase opens a base case: a file beside the one that names it, or a
// bundled case by its name without ".toml".
func openBase(from *tree.Source, n *tree.Node) (*tree.Source, error) {
	name, ok := n.Val.(string)
	if !ok || name == "" {
		return nil, fmt.Errorf("want the case to start from, found %s", n.What())
	}
	src, err := (*tree.Source)(nil), error(nil)
	if path.Ext(name) == ".toml" {
		src, err = tree.OpenBeside(from, name)
	} else {
		src, err = openBundled(name)
	}
	if err != nil {
		return nil, fmt.Errorf("%q: %w", name, err)
	}
	return src, nil
}

// checkFormat refuses a file of another format.
func checkFormat(d *tree.Decoder, top *tree.Node) {
	n, ok := top.Val.(map[string]*tree.Node)["format"]
	if !ok {
		d.Rep.Add(top.At(), "format", fmt.Errorf("missing, want format = %d", Format))
		return
	}
	if v, ok := n.Val.(int64); !ok || v != Format {
		d.Rep.Add(n.At(), "format", fmt.Errorf("want %d, the case format this program reads, found %s", Format, n.What()))
	}
}

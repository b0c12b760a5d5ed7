package cases

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	"archload/cases/tree"
)

// OpenNamed opens a bundled case, or a case file.
func OpenNamed(fsys fs.FS, nameOrPath string) (*tree.Source, error) {
	if strings.ContainsAny(nameOrPath, `/\`) || path.Ext(nameOrPath) == ".toml" {
		return tree.OpenSource(fsys, nameOrPath, nameOrPath)
	}
	return openBundled(nameOrPath)
}

// SetKeys lays the keys over the tree of a case.
func SetKeys(d *tree.Decoder, whole *tree.Node, over *tree.Source, set []tree.KeyValue) *tree.Node {
	d.Rep.Order = append(d.Rep.Order, over)
	for i, s := range set {
		parts, err := tree.SplitKey(s.Key)
		value := tree.Grow(over, s.Value.Value, "", i+1, nil)
		if err == nil && (parts[0].Name == "base" || parts[0].Name == "format") {
			err = fmt.Errorf("says how to read the case's file; want another key")
		}
		if err == nil {
			whole, err = tree.WithKey(whole, parts, "", value, Alternatives)
		}
		if err != nil {
			d.Rep.Add(tree.Place{Src: over, Line: i + 1}, s.Key, err)
			return nil
		}
	}
	return whole
}

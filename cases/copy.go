package cases

import (
	"path"
	"strings"

	"archload/cases/tree"
)

// File is a file to be written beside others.
type File struct {
	Name string
	Data []byte
}

// Copy returns a bundled case with every file that it opens: its bases and
// tables. The case itself comes first, renamed to name.toml.
func Copy(bundled, name string) ([]File, error) {
	src, err := openBundled(bundled)
	if err != nil {
		return nil, tree.Faults{{File: bundled, Line: 1, Err: err}}
	}
	c, err := load(src)
	if err != nil {
		return nil, err
	}
	out := []File{{Name: strings.TrimSuffix(name, ".toml") + ".toml", Data: src.Data}}
	for _, s := range c.Rep.Order {
		if s.Label != src.Label {
			out = append(out, File{Name: path.Base(s.Label), Data: s.Data})
		}
	}
	return out, nil
}

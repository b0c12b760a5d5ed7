package cases

import (
	"path"
	"strings"
)

// Texts returns the case as written: its TOML files, the case first and then
// those it is based on, each under its name without the folder.
func (c *Case) Texts() []File {
	var out []File
	for _, s := range c.rep.order {
		if strings.HasSuffix(s.label, ".toml") {
			out = append(out, File{Name: path.Base(s.label), Data: s.data})
		}
	}
	return out
}

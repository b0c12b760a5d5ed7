package say

import (
	"path"
	"strings"

	"archload/cases"
)

// Texts returns the case as written: its TOML files, the case first and then
// those it is based on, each under its name without the folder.
func Texts(c *cases.Case) []cases.File {
	var out []cases.File
	for _, s := range c.Rep.Order {
		if strings.HasSuffix(s.Label, ".toml") {
			out = append(out, cases.File{Name: path.Base(s.Label), Data: s.Data})
		}
	}
	return out
}

package bench

import (
	"embed"
	"io/fs"
	"path"
	"strings"
)

// bundled are the examples.
//
//go:embed bundled/*.toml
var bundled embed.FS

// Open loads a bundled bench file by its name, or one from fsys: a name without a slash and without the ending
// .toml is that of a bundled one. Errors are those of Load.
func Open(fsys fs.FS, nameOrPath string) (*File, error) {
	if path.Ext(nameOrPath) == ".toml" || strings.Contains(nameOrPath, "/") {
		return Load(fsys, nameOrPath)
	}
	inside := "bundled/" + nameOrPath + ".toml"
	if _, err := fs.Stat(bundled, inside); err != nil {
		return Load(fsys, nameOrPath)
	}
	return Load(bundled, inside)
}

// Names lists the bundled bench files.
func Names() []string {
	var out []string
	list, _ := fs.Glob(bundled, "bundled/*.toml") // the pattern is well formed
	for _, name := range list {
		out = append(out, strings.TrimSuffix(path.Base(name), ".toml"))
	}
	return out
}

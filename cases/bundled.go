package cases

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"archload/cases/tree"
)

// BundledFiles are the cases that come with the program, and their tables.
//
//go:embed bundled
var BundledFiles embed.FS

// BundledDir is where they lie in BundledFiles.
const BundledDir = "bundled"

// openBundled opens a bundled case.
func openBundled(name string) (*tree.Source, error) {
	file := path.Join(BundledDir, name+".toml")
	src, err := tree.OpenSource(BundledFiles, file, file)
	if err == nil {
		return src, nil
	}
	names, listErr := bundledNames()
	if listErr != nil {
		return nil, listErr
	}
	if like := tree.Nearest(name, names); like != "" {
		return nil, fmt.Errorf("no bundled case of this name; did you mean %q?", like)
	}
	return nil, fmt.Errorf("no bundled case of this name (a file needs its ending .toml); there are %s", strings.Join(names, ", "))
}

// bundledNames lists the bundled cases.
func bundledNames() ([]string, error) {
	files, err := fs.Glob(BundledFiles, path.Join(BundledDir, "*.toml"))
	if err != nil {
		return nil, err
	}
	for i, f := range files {
		files[i] = TrimExt(path.Base(f))
	}
	slices.Sort(files)
	return files, nil
}

// BundledFS returns the bundled cases and their tables, for copying.
func BundledFS() (fs.FS, error) { return fs.Sub(BundledFiles, BundledDir) }

// opening returns the first paragraph of a file's opening comment.
func opening(text string) string {
	var words []string
	for line := range strings.Lines(text) {
		body, ok := strings.CutPrefix(strings.TrimSpace(line), "#")
		if !ok || strings.TrimSpace(body) == "" {
			break
		}
		words = append(words, strings.Fields(body)...)
	}
	return strings.Join(words, " ")
}

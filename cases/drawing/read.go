package drawing

import (
	"path"
	"strings"
)

// Named parts "top.svg#outline" into file and name; ok is false for the
// name of another kind of file.
func Named(value string) (file, name string, ok bool) {
	file, name, _ = strings.Cut(value, "#")
	ext := strings.ToLower(path.Ext(file))
	return file, name, ext == ".svg" || ext == ".svgz"
}

// Read reads a drawing; today every drawing is SVG. The error is a
// *Fault.
func Read(data []byte) (Sheet, error) {
	w, err := readSVG(data)
	if err != nil {
		return nil, err
	}
	return w, nil
}

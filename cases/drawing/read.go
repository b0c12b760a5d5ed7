package drawing

import (
	"path"
	"slices"
	"strings"
)

// format is one kind of drawing: how its files end, and what reads them.
type format struct {
	endings []string
	read    func(data []byte) (Sheet, error) // the error is a *Fault
}

// formats lists the kinds of drawing. A new one is a row here and the file that
// reads it.
func formats() []format {
	return []format{
		{[]string{".svg", ".svgz"}, readSVG},
	}
}

// formatOf finds the format of a file by its ending; ok is false if it is no
// drawing.
func formatOf(file string) (f format, ok bool) {
	ending := strings.ToLower(path.Ext(file))
	for _, f := range formats() {
		if slices.Contains(f.endings, ending) {
			return f, true
		}
	}
	return format{}, false
}

// Named parts "top.svg#outline" into file and name; ok is false for the
// name of another kind of file.
func Named(value string) (file, name string, ok bool) {
	file, name, _ = strings.Cut(value, "#")
	_, ok = formatOf(file)
	return file, name, ok
}

// Read reads a drawing in the format that the ending of its file's name tells.
// The error is a *Fault.
func Read(file string, data []byte) (Sheet, error) {
	f, ok := formatOf(file)
	if !ok {
		return nil, &Fault{Line: 1, Msg: "want a drawing, found " + file}
	}
	return f.read(data)
}

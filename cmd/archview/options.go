package main

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/materials"
	"archload/viz/desk"
	"archload/viz/desk/looks"
	"archload/viz/stage"

	"github.com/spf13/cobra"
)

// options are the command line.
type options struct {
	disk                       *disk.Disk
	field, face, view, section string
	load, enlarge              float64
	difference, flow, noLines  bool
	forces                     bool
	set                        []string
	lesson                     string
	asking                     bool
	step                       int
	snapshot, size             string
	density                    float64
	controls                   bool
	tell                       bool
	linear                     bool
}

func (o *options) flags(c *cobra.Command) {
	f := c.Flags()
	f.SortFlags = false
	f.StringVar(&o.field, "field", "", "what is shown: "+strings.Join(looks.FieldWords(), ", "))
	f.StringVar(&o.face, "face", "", "face of the plate for stresses: outside or inside")
	f.StringVar(&o.view, "view", "", "from where: at an angle, from outside, from the tail, from the treble side, from inside, from behind")
	f.Float64Var(&o.load, "load", 100, "string load, percent of full")
	f.Float64Var(&o.enlarge, "enlarge", 0, "draw movements so many times as large (0: chosen)")
	f.StringVar(&o.section, "section", "", "section strip: none, cross, long")
	f.BoolVar(&o.flow, "paths", false, "draw the paths of the load")
	f.BoolVar(&o.forces, "forces", false, "draw the forces as arrows to scale")
	f.BoolVar(&o.noLines, "no-lines", false, "no lines at the steps of the legend")
	f.BoolVar(&o.difference, "difference", false, "of two designs: what the second has more than the first")
	f.StringArrayVar(&o.set, "set", nil, `set a key of the first case, as in "bridge.relief.depth = 0.2"; may be repeated`)
	f.StringVar(&o.lesson, "lesson", "", "begin a lesson: its bundled name or its file")
	f.IntVar(&o.step, "step", 1, "step of the lesson to begin with")
	f.BoolVar(&o.asking, "asking", false, "a snapshot of the step's question, not of its answer")
	f.StringVar(&o.snapshot, "snapshot", "", "write the drawing to this PNG instead of opening a window")
	f.StringVar(&o.size, "size", "1280x800", "size of the window in points, or of the snapshot in pixels")
	f.Float64Var(&o.density, "density", 1, "pixels to a point in a snapshot: 2 for twice the letters' size")
	f.BoolVar(&o.controls, "controls", false, "a snapshot of the whole window, with its controls")
	f.BoolVar(&o.linear, "linear", false, "picture and numbers on the shape as carved; else they settle to the shape as it has moved when the hand rests")
	f.BoolVar(&o.tell, "tell", false, "write a line about each frame and where the controls stand, for scripts")
}

// fits says whether the flags go together with so many cases.
func (o *options) fits(cases int) error {
	switch {
	case cases > 2 || cases == 0 && o.lesson == "" && o.snapshot != "":
		return shell.Usagef("want one CASE or two, or --lesson NAME, found %d cases; see archview --help", cases)
	case o.difference && cases < 2:
		return shell.Usagef("--difference: want two cases, found %d", cases)
	case o.asking && (o.lesson == "" || o.snapshot == ""):
		return shell.Usagef("--asking: want --lesson NAME and --snapshot FILE with it")
	case o.step != 1 && o.lesson == "":
		return shell.Usagef("--step: want --lesson NAME with it")
	case o.snapshot == "" && (o.controls || o.density != 1):
		return shell.Usagef("--controls and --density: want --snapshot FILE with them")
	case o.snapshot != "" && strings.ToLower(filepath.Ext(o.snapshot)) != ".png":
		return shell.Usagef("--snapshot: want a file that ends in .png, found %q", o.snapshot)
	}
	return nil
}

// looks turns the flags into what is shown at first; remembered is what the
// window showed the last time.
func (o *options) looks(remembered looks.Looks) (looks.Looks, error) {
	l := remembered
	var err error
	if o.field != "" {
		if l.Field, err = looks.FieldNamed(o.field); err != nil {
			return l, shell.Usagef("--field: %w", err)
		}
	}
	switch o.face {
	case "":
	case "outside", "inside":
		l.Inside = o.face == "inside"
	default:
		return l, shell.Usagef("--face: want outside or inside, found %q", o.face)
	}
	if o.view != "" {
		if err := looks.KnownView(o.view); err != nil {
			return l, shell.Usagef("--view: %w", err)
		}
		l.View = o.view
	}
	if o.section != "" {
		if l.Cut, err = looks.CutNamed(o.section); err != nil {
			return l, shell.Usagef("--section: %w", err)
		}
	}
	if !(o.load >= 0 && o.load <= 100) {
		return l, shell.Usagef("--load: want 0 to 100 percent, found %g", o.load)
	}
	if !(o.enlarge >= 0 && o.enlarge <= 1e5) {
		return l, shell.Usagef("--enlarge: want 0 or more, found %g", o.enlarge)
	}
	l.Load, l.Enlarge = o.load/100, o.enlarge
	l.Flow, l.Forces = l.Flow || o.flow, l.Forces || o.forces
	l.Contours = l.Contours && !o.noLines
	if o.difference {
		l.Arrange = stage.Difference
	}
	return l, nil
}

// keys reads --set.
func (o *options) keys() ([]tree.KeyValue, error) {
	var out []tree.KeyValue
	for _, text := range o.set {
		c, err := tree.ParseChange(text)
		if err != nil {
			return nil, shell.Usagef("--set: %w", err)
		}
		if len(c.Values) != 1 {
			return nil, shell.Usagef("--set: want one value for %s, found %d", c.Key, len(c.Values))
		}
		out = append(out, tree.KeyValue{Key: c.Key, Value: c.Values[0]})
	}
	return out, nil
}

// Least size of a snapshot, points: below it words lie over each other.
const (
	leastWidth  = 560.0
	leastHeight = 400.0
)

// pixels reads a size such as 1280x800.
func (o *options) pixels() (w, h int, err error) {
	if n, err := fmt.Sscanf(o.size, "%dx%d", &w, &h); err != nil || n != 2 || w < 200 || h < 150 || w > 16000 || h > 16000 {
		return 0, 0, shell.Usagef("--size: want WIDTHxHEIGHT from 200x150 to 16000x16000, as in 1280x800, found %q", o.size)
	}
	if !(o.density >= 0.5 && o.density <= 4) {
		return 0, 0, shell.Usagef("--density: want 0.5 to 4, found %g", o.density)
	}
	if o.snapshot != "" && (float64(w) < leastWidth*o.density || float64(h) < leastHeight*o.density) {
		return 0, 0, shell.Usagef("--size: want at least %.0fx%.0f at this density, found %s", leastWidth*o.density, leastHeight*o.density, o.size)
	}
	return w, h, nil
}

// setUp makes the options of the desk from a command line.
func (o *options) setUp(args []string, remembered looks.Looks) (d desk.Options, err error) {
	looks, err := o.looks(remembered)
	if err != nil {
		return d, err
	}
	keys, err := o.keys()
	if err != nil {
		return d, err
	}
	woods, err := materials.Cards()
	if err != nil {
		return d, err
	}
	d = desk.Options{FS: o.disk, Solve: design.Options{Workers: runtime.GOMAXPROCS(0)}, Woods: woods, Looks: looks, Lesson: o.lesson, Step: o.step, Asking: o.asking, Keys: keys, OnMovedShape: !o.linear}
	d.Folder, d.Home = folders()
	for _, a := range args {
		name := filepath.ToSlash(a)
		// A faulty case is told before a window opens.
		c, err := cases.OpenChanged(o.disk, name, "--set", firstOnly(keys, len(d.Names)))
		if err == nil {
			err = c.AtRest()
		}
		if err == nil {
			_, err = shape.NewGeometry(c)
		}
		if err != nil {
			return d, err
		}
		d.Names = append(d.Names, name)
	}
	return d, nil
}

// folders are the one that the window stands in and the user's own, with slashes; "" where the system does not say.
func folders() (here, home string) {
	here, _ = os.Getwd()
	home, _ = os.UserHomeDir()
	return filepath.ToSlash(here), filepath.ToSlash(home)
}

// firstOnly gives the keys to the first case alone.
func firstOnly(keys []tree.KeyValue, i int) []tree.KeyValue {
	if i > 0 {
		return nil
	}
	return keys
}

package verify

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"

	"github.com/pelletier/go-toml/v2"

	"archload/testdata"
)

// Check is one value of a table in testdata/verification.
type Check struct {
	Name     string  `toml:"name"`
	Quantity string  `toml:"quantity"`
	Problem  string  `toml:"problem"` // its name in package problem
	Read     string  `toml:"read"`    // what to read off its answer
	Value    float64 `toml:"value"`
	Unit     string  `toml:"unit"`
	By       string  `toml:"by"`     // short: author and year
	Source   string  `toml:"source"` // author, title, year, table or page
	Obtained string  `toml:"obtained"`
	Kind     string  `toml:"kind"`

	Tolerance float64 `toml:"tolerance"` // relative to Scale, or in the unit if Absolute
	Scale     float64 `toml:"scale"`     // 0: the value itself
	Absolute  bool    `toml:"absolute"`
	Bound     string  `toml:"bound"` // "most" or "least": the value is a limit
	Bars      []Bar   `toml:"bars"`  // tolerances by mesh, in place of Tolerance; with a bound, the meshes on which it holds
	Reason    string  `toml:"reason"`

	file string
	row  int
}

// Bar is the tolerance at one mesh density; 0: not checked on that kind of mesh.
type Bar struct {
	Divisions int     `toml:"divisions"`
	Regular   float64 `toml:"regular"`
	Distorted float64 `toml:"distorted"`
}

// kinds are the kinds of value a table may hold.
var kinds = [...]string{"published", "analytic", "computed", "identity"}

// tables reads every table, in the order of their names.
func tables(fsys fs.FS) ([]Check, error) {
	names, err := fs.Glob(fsys, "verification/*.toml")
	if err != nil {
		return nil, err
	}
	var all []Check
	var faults []error
	for _, name := range names {
		checks, err := table(fsys, name)
		all = append(all, checks...)
		faults = append(faults, err)
	}
	return all, errors.Join(faults...)
}

// table reads one table; a key that is not known is refused, and so is a row
// without unit, source or tolerance.
func table(fsys fs.FS, name string) ([]Check, error) {
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, err
	}
	var t struct {
		Check []Check `toml:"check"`
	}
	if err := toml.NewDecoder(bytes.NewReader(data)).DisallowUnknownFields().Decode(&t); err != nil {
		var strict *toml.StrictMissingError
		if errors.As(err, &strict) {
			return nil, fmt.Errorf("%s: %s", path.Base(name), strict.String())
		}
		return nil, fmt.Errorf("%s: %w", path.Base(name), err)
	}
	if len(t.Check) == 0 {
		return nil, fmt.Errorf("%s: want at least one [[check]], found none", path.Base(name))
	}
	var faults []error
	for i := range t.Check {
		t.Check[i].file, t.Check[i].row = path.Base(name), i+1
		if err := t.Check[i].whole(); err != nil {
			faults = append(faults, err)
		}
	}
	return t.Check, errors.Join(faults...)
}

// whole names what a row lacks.
func (c *Check) whole() error {
	fault := func(key, form string, args ...any) error {
		return fmt.Errorf("%s: check %d (%s): %s: %s", c.file, c.row, c.Name, key, fmt.Sprintf(form, args...))
	}
	for _, k := range []struct{ key, value string }{
		{"name", c.Name}, {"quantity", c.Quantity}, {"problem", c.Problem}, {"read", c.Read}, {"unit", c.Unit},
		{"by", c.By}, {"source", c.Source}, {"obtained", c.Obtained}, {"reason", c.Reason},
	} {
		if k.value == "" {
			return fault(k.key, "want text, found none")
		}
	}
	if !slices.Contains(kinds[:], c.Kind) {
		return fault("kind", "want one of %v, found %q", kinds, c.Kind)
	}
	if !slices.Contains([]string{"", "most", "least"}, c.Bound) {
		return fault("bound", "want most, least or none, found %q", c.Bound)
	}
	return c.checkTolerance(fault)
}

func (c *Check) checkTolerance(fault func(key, form string, args ...any) error) error {
	switch {
	case c.Tolerance != 0 && (c.Bound != "" || len(c.Bars) > 0):
		return fault("tolerance", "want none beside bars or a bound, found %g", c.Tolerance)
	case c.Bound == "" && len(c.Bars) == 0 && !(c.Tolerance > 0):
		return fault("tolerance", "want > 0, found %g", c.Tolerance)
	case c.Value == 0 && c.Scale == 0 && !c.Absolute && c.Bound == "":
		return fault("scale", "want a scale, or absolute = true, for a value of 0")
	}
	for _, b := range c.Bars {
		if b.Divisions < 2 || b.Regular < 0 || b.Distorted < 0 || b.Regular+b.Distorted == 0 {
			return fault("bars", "want divisions >= 2 and a tolerance > 0, found %+v", b)
		}
	}
	return nil
}

// Tables returns every published check, in the order in which they run. The
// error lists every fault of the tables.
func Tables() ([]Check, error) { return tables(testdata.Files) }

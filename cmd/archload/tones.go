package main

import (
	"io"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/tone"

	"archload/cases/design"
	"archload/cases/say"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
)

// mostTones is how many tones may be asked for.
const mostTones = 200

func newTones(d *disk.Disk) *cobra.Command {
	o := wanted{disk: d}
	var state string
	var count int
	cmd := &cobra.Command{
		Use:   "tones CASE",
		Short: "Find the tones of the top: free in the hand, on its edge, or strung",
		Long: "Find the lowest tones of the top and say how it swings in each: how many fields move\n" +
			"against each other, what moves, what the bridge does. States: free (the plate in the\n" +
			"hand, as it is tapped), bare (on its edge, without strings and bridge), strung (under its\n" +
			"strings, which are muted; what bears stays in contact). There is no air in these numbers,\n" +
			"and back and neck are held still. With -o come sand pictures: where sand would gather.",
		Example:           "  archload tones course-guitar\n  archload tones mine/mine.toml --state free --count 10 -o pictures",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			rep, shapes, err := o.tones(cmd, args[0], state, count)
			if err != nil {
				return err
			}
			stem := filepath.Join(o.dir, fileStem(args[0])+"-"+rep.State)
			files := append(pictureFiles(stem, viz.SandPictures(shapes, rep)),
				output{stem + "-tones", []string{"csv"}, toneTable(rep).write})
			return o.deliver(cmd, rep, func(w io.Writer) error { return say.WriteTones(w, rep) }, files)
		},
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&state, "state", "", "free, bare or strung (default: strung if the case has strings and a bridge, else bare)")
	cmd.Flags().IntVar(&count, "count", 20, "how many tones to find, lowest first")
	return cmd
}

// tones loads a case and finds its tones, telling its progress.
func (o *wanted) tones(cmd *cobra.Command, arg, state string, count int) (*tone.Report, *tone.Shapes, error) {
	if err := o.check(); err != nil {
		return nil, nil, err
	}
	if count < 1 || count > mostTones {
		return nil, nil, shell.Usagef("--count: want 1 to %d, found %d", mostTones, count)
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	tell(fileStem(arg) + ": reading")
	c, err := openCase(o.disk, arg)
	if err != nil {
		return nil, nil, err
	}
	if err := spare(o.disk, o.json); err != nil {
		return nil, nil, err
	}
	of, err := stateOf(c, state)
	if err != nil {
		return nil, nil, err
	}
	return tone.FindTones(cmd.Context(), c, of, count, design.Options{
		Workers: runtime.NumCPU(), Refine: o.refine,
		Progress: func(stage string) { tell(fileStem(arg) + ": " + stage) },
	})
}

// stateOf reads --state.
func stateOf(c *cases.Case, name string) (design.State, error) {
	if name == "" {
		if c.Strings != nil && c.Bridge != nil {
			return design.Strung, nil
		}
		return design.Bare, nil
	}
	if s := design.State(name); slices.Contains([]design.State{design.Free, design.Bare, design.Strung}, s) {
		return s, nil
	}
	return "", shell.Usagef("--state: want free, bare or strung, found %q", name)
}

// toneTable lists the tones with all their numbers.
func toneTable(r *tone.Report) table {
	t := table{head: []string{"tone", "pattern", "bridge", "frequency_Hz", "mesh_error", "modal_mass_g", "x_mm", "y_mm",
		"share_plate", "share_braces", "share_sides", "share_bridge", "share_masses",
		"pumps", "rocks_to_nut", "rocks_sideways", "slides_along", "slides_across", "turns"}}
	for i := range r.Tones {
		n := &r.Tones[i]
		b, words := tone.BridgeTone{}, ""
		if n.Bridge != nil {
			b, words = *n.Bridge, n.Bridge.Words
		}
		t.rows = append(t.rows, row([]string{strconv.Itoa(i + 1), n.Pattern, words}, n.Hz, float64(n.Error), n.ModalMass, n.X, n.Y,
			n.Share.Plate, n.Share.Braces, n.Share.Sides, n.Share.Bridge, n.Share.Masses,
			b.Pumps, b.RocksToNut, b.RocksSideways, b.SlidesAlong, b.SlidesAcross, b.Turns))
	}
	return t
}

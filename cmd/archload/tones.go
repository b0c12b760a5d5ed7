package main

import (
	"io"
	"path/filepath"
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

// tonesWanted is what the flags of tones say.
type tonesWanted struct {
	wanted
	state   string
	count   int
	changes bool
}

func newTones(d *disk.Disk) *cobra.Command {
	o := tonesWanted{wanted: wanted{disk: d}}
	cmd := &cobra.Command{
		Use:   "tones CASE [CASE...]",
		Short: "Find the tones of the top: free in the hand, on its edge, or strung",
		Long: "Find the lowest tones of the top and say how it swings in each: how many fields move\n" +
			"against each other, what moves, what the bridge does. States: free (the plate in the\n" +
			"hand, as it is tapped), bare (on its edge, without strings and bridge), strung (under its\n" +
			"strings, which are muted; what bears stays in contact). There is no air in these numbers,\n" +
			"and back and neck are held still. Of several designs the tones are set beside those of\n" +
			"the first one by their shapes, not by their numbers. With --changes comes which way wood,\n" +
			"thickness and heights of bars move each tone. With -o come sand pictures: where sand\n" +
			"would gather.",
		Example:           "  archload tones course-guitar\n  archload tones mine/mine.toml --state free --count 10 --changes -o pictures\n  archload tones a.toml b.toml --state free",
		Args:              takes(1, mostResponses, "1 to 6 cases"),
		ValidArgsFunction: completeCases,
		RunE:              o.run,
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&o.state, "state", "", "free, bare or strung (default: strung if the case has strings and a bridge, else bare)")
	cmd.Flags().IntVar(&o.count, "count", 20, "how many tones to find, lowest first")
	cmd.Flags().BoolVar(&o.changes, "changes", false, "say which way wood, thickness and heights of bars move each tone")
	return cmd
}

// run finds the tones of all cases and gives them out.
func (o *tonesWanted) run(cmd *cobra.Command, args []string) error {
	if err := o.check(); err != nil {
		return err
	}
	if o.count < 1 || o.count > mostTones {
		return shell.Usagef("--count: want 1 to %d, found %d", mostTones, o.count)
	}
	var reps []*tone.Report
	var first *tone.Shapes
	var files []output
	for i, arg := range args {
		r, s, err := o.tones(cmd, arg)
		if err != nil {
			return err
		}
		if i == 0 {
			first = s
		} else {
			r.Match(s, reps[0], first)
		}
		reps = append(reps, r)
		stem := filepath.Join(o.dir, fileStem(arg)+"-"+r.State)
		files = append(files, pictureFiles(stem, viz.SandPictures(s, r))...)
		files = append(files, output{stem + "-tones", []string{"csv"}, toneTable(r).write})
	}
	var data any = reps[0]
	if len(reps) > 1 {
		data = reps
	}
	return o.deliver(cmd, data, func(w io.Writer) error { return say.WriteTones(w, reps) }, files)
}

// tones loads a case and finds its tones, telling its progress.
func (o *tonesWanted) tones(cmd *cobra.Command, arg string) (*tone.Report, *tone.Shapes, error) {
	var s *tone.Shapes
	r, err := withCase(&o.wanted, cmd, arg, func(c *cases.Case, how design.Options) (*tone.Report, error) {
		of, err := stateOf(c, o.state)
		if err != nil {
			return nil, err
		}
		var r *tone.Report
		r, s, err = tone.FindTones(cmd.Context(), c, of, o.count, how)
		if err == nil && o.changes {
			err = r.FindChanges(cmd.Context(), s, how)
		}
		return r, err
	})
	return r, s, err
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

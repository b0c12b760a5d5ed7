package main

import (
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases/tone"

	"archload/cases/design"
	"archload/cases/say"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
)

// most designs that stand side by side.
const mostResponses = 6

func newResponse(d *disk.Disk) *cobra.Command {
	o := wanted{disk: d}
	var state, list string
	var ro tone.ResponseOptions
	cmd := &cobra.Command{
		Use:   "response CASE [CASE...]",
		Short: "Say how readily the top answers the strings and taps, by frequency",
		Long: "Find how readily the top moves when it is driven: mobility (velocity over force) at the\n" +
			"saddle up and down, along the strings and across, and at the taps of the case; how much air\n" +
			"the top shifts; levels by thirds of octaves; how long the strings' notes last by what the\n" +
			"bridge takes from them. Several designs stand side by side with their differences in dB.\n" +
			"There is no air in these numbers, and back and neck are held still: levels compare designs,\n" +
			"they do not tell the sound.",
		Example:           "  archload response course-guitar\n  archload response a.toml b.toml --to 2000\n  archload response mine.toml --hz 98,196,294 --json -",
		Args:              takes(1, mostResponses, "1 to 6 cases"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := readHz(&ro, list); err != nil {
				return err
			}
			reps, err := o.responses(cmd, args, state, ro)
			if err != nil {
				return err
			}
			var data any = reps[0]
			if len(reps) > 1 {
				data = reps
			}
			files := pictureFiles(filepath.Join(o.dir, fileStem(args[0])+"-"+reps[0].State), []viz.Page{viz.ResponsePicture(reps)})
			for i, r := range reps {
				stem := filepath.Join(o.dir, fileStem(args[i])+"-"+r.State)
				files = append(files, output{stem + "-response", []string{"csv"}, responseTable(r).write},
					output{stem + "-bands", []string{"csv"}, bandTable(r).write})
			}
			return o.deliver(cmd, data, func(w io.Writer) error { return say.WriteResponse(w, reps) }, files)
		},
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&state, "state", "", "free, bare or strung (default: strung if the case has strings and a bridge, else bare)")
	cmd.Flags().Float64Var(&ro.From, "from", 50, "lowest frequency, `HZ`")
	cmd.Flags().Float64Var(&ro.To, "to", 1500, "highest frequency, `HZ`")
	cmd.Flags().IntVar(&ro.Points, "points", 400, "how many frequencies between them")
	cmd.Flags().StringVar(&list, "hz", "", "these frequencies instead, a `LIST` as in 98,196,294")
	return cmd
}

// readHz checks the frequencies that are asked for.
func readHz(o *tone.ResponseOptions, list string) error {
	switch {
	case !(o.From > 0 && o.To > o.From):
		return shell.Usagef("--from, --to: want 0 < from < to, found %g and %g", o.From, o.To)
	case o.Points < 2 || o.Points > 20000:
		return shell.Usagef("--points: want 2 to 20000, found %d", o.Points)
	case list == "":
		return nil
	}
	for _, word := range strings.Split(list, ",") {
		f, err := strconv.ParseFloat(strings.TrimSpace(word), 64)
		if err != nil || !(f > 0 && f < 1e6) {
			return shell.Usagef("--hz: want frequencies above 0 Hz between commas, found %q", word)
		}
		o.Hz = append(o.Hz, f)
	}
	o.From, o.To = o.Hz[0], o.Hz[0]
	for _, f := range o.Hz {
		o.From, o.To = min(o.From, f), max(o.To, f)
	}
	return nil
}

// responses finds the responses of some cases; all must have the same places.
func (o *wanted) responses(cmd *cobra.Command, args []string, state string, ro tone.ResponseOptions) ([]*tone.ResponseReport, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	var list []*tone.ResponseReport
	for _, arg := range args {
		tell(fileStem(arg) + ": reading")
		c, err := openCase(o.disk, arg)
		if err != nil {
			return nil, err
		}
		if err := spare(o.disk, o.json); err != nil {
			return nil, err
		}
		of, err := stateOf(c, state)
		if err != nil {
			return nil, err
		}
		r, err := tone.FindResponse(cmd.Context(), c, of, ro, design.Options{
			Workers: runtime.NumCPU(), Refine: o.refine,
			Progress: func(stage string) { tell(fileStem(arg) + ": " + stage) },
		})
		if err != nil {
			return nil, err
		}
		if len(list) > 0 && !tone.SamePlaces(list[0], r) {
			return nil, shell.Usagef("response: %s is driven and looked at in other places than %s: want the same strings or taps", arg, args[0])
		}
		list = append(list, r)
	}
	return list, nil
}

// responseTable lists the curves.
func responseTable(r *tone.ResponseReport) table {
	t := table{head: []string{"frequency_Hz"}}
	for _, p := range r.Response.Paths {
		name := p.Drive + " to " + p.At
		t.head = append(t.head, "re "+name, "im "+name)
	}
	for i, f := range r.Response.Hz {
		values := []float64{f}
		for _, p := range r.Response.Paths {
			values = append(values, p.Re[i], p.Im[i])
		}
		t.rows = append(t.rows, row(nil, values...))
	}
	return t
}

// bandTable lists the levels.
func bandTable(r *tone.ResponseReport) table {
	t := table{head: []string{"nominal_Hz", "middle_Hz"}}
	for _, p := range r.Response.Paths {
		t.head = append(t.head, fmt.Sprintf("%s to %s_dB", p.Drive, p.At))
	}
	for _, b := range r.Bands {
		values := []float64{b.Nominal, b.Middle}
		for _, l := range b.Levels {
			values = append(values, float64(l))
		}
		t.rows = append(t.rows, row(nil, values...))
	}
	return t
}

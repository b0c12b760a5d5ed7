package main

import (
	"io"
	"math"
	"path/filepath"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/setup"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz/sheet"
)

// actionFlags is what the command action is asked for.
type actionFlags struct {
	wanted
	wish  setup.Wish
	paper string
}

func newAction(d *disk.Disk) *cobra.Command {
	o := actionFlags{wanted: wanted{disk: d}}
	cmd := &cobra.Command{
		Use:   "action CASE",
		Short: "Find the neck angle, saddle and anchor that give the strings a wished height",
		Long: "Find what gives the strings a wished height over the board at the octave, at pitch, and a\n" +
			"wished pressure on the bridge: the neck's angle for the saddle as it is, and the saddle's\n" +
			"height for the neck as it is, side by side, each with the height of the strings' anchor.\n" +
			"Each way is solved, so that what sinks under the strings is in it; what is to be\n" +
			"expected after decades stands beside it.\n\n" +
			"The case needs [strings.path] with neck_angle and fret_plane. Without a wish it prints\n" +
			"how the design stands, and what a degree or a millimetre would change.",
		Example: "  archload action course-guitar-neck\n" +
			"  archload action course-guitar-neck --bass 2.4 --treble 1.8 --downforce 150 -o bench",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE:              func(cmd *cobra.Command, args []string) error { return o.run(cmd, args[0]) },
	}
	f := cmd.Flags()
	f.Float64Var(&o.wish.Bass, "bass", 0, "wished height of the bass outer string at the octave, `MM`")
	f.Float64Var(&o.wish.Treble, "treble", 0, "wished height of the treble outer string at the octave, `MM`")
	f.Float64Var(&o.wish.Downforce, "downforce", 0, "wished pressure of the strings on the bridge, `N`")
	f.Float64Var(&o.wish.BreakAngle, "break-angle", 0, "instead: wished bend of the strings over the saddle, front and back together, `DEG`")
	o.flags(cmd)
	f.StringVar(&o.paper, "paper", string(sheet.A4), "`PAPER` of the sheet: a4, letter, or roll")
	return cmd
}

// wished is what the flags ask for; nil if they ask for nothing.
func (o *actionFlags) wished(cmd *cobra.Command) (*setup.Wish, error) {
	given := func(names ...string) (n int) {
		for _, name := range names {
			if cmd.Flags().Changed(name) {
				n++
			}
		}
		return n
	}
	if given("bass", "treble", "downforce", "break-angle") == 0 {
		return nil, nil
	}
	if given("bass", "treble") != 2 || given("downforce", "break-angle") != 1 {
		return nil, shell.Usagef("want --bass and --treble together, with one of --downforce and --break-angle")
	}
	w := o.wish
	for _, q := range []struct {
		name    string
		v, most float64
	}{{"bass", w.Bass, 20}, {"treble", w.Treble, 20}, {"downforce", w.Downforce, 5000}, {"break-angle", w.BreakAngle, 60}} {
		if given(q.name) == 1 && !(q.v > 0 && q.v <= q.most && !math.IsInf(q.v, 0)) {
			return nil, shell.Usagef("--%s: want more than 0 and at most %g, found %g", q.name, q.most, q.v)
		}
	}
	return &w, nil
}

func (o *actionFlags) run(cmd *cobra.Command, arg string) error {
	w, err := o.wished(cmd)
	if err != nil {
		return err
	}
	if err := checkPaper(o.paper); err != nil {
		return err
	}
	var c *cases.Case
	s, err := withCase(&o.wanted, cmd, arg, func(opened *cases.Case, how design.Options) (*setup.Sheet, error) {
		c, how.NoFlow, how.NoError = opened, true, true
		return setup.Of(cmd.Context(), c, w, how)
	})
	if err != nil {
		return err
	}
	sh := sheet.Action(c, s, sheet.Paper(o.paper))
	file := output{filepath.Join(o.dir, fileStem(arg)+"-"+sh.Name), sh.Formats(), sh.Write}
	return o.deliver(cmd, s, func(out io.Writer) error { return say.WriteSetup(out, s) }, []output{file})
}

package main

import (
	"fmt"
	"path/filepath"

	"archload/cmd/internal/disk"

	"github.com/spf13/cobra"
)

// demoCases are the two arches, each with a tight and a relieved foot.
func demoCases() []string {
	return []string{"course-guitar", "course-guitar-treble", "course-guitar-relief", "course-guitar-treble-relief"}
}

func newDemo(d *disk.Disk) *cobra.Command {
	o := compared{wanted: wanted{disk: d, refine: 1}}
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Solve the bundled comparison and write its pictures: the place to start",
		Long: "Solve the course guitar with the apex on the centre line and 22 mm to the treble, each\n" +
			"with a tight foot and with 0.12 mm of relief; print them side by side; write pictures\n" +
			"(PNG and SVG) and tables (CSV).",
		Args: takes(0, 0, "no argument"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := o.compare(cmd, demoCases(), "demo"); err != nil {
				return err
			}
			_, err := fmt.Fprintf(cmd.OutOrStdout(), "begin with %s and %s\n",
				filepath.Join(o.dir, "demo-cross-arches.png"), filepath.Join(o.dir, "course-guitar-treble-relief-sink.png"))
			return err
		},
	}
	o.orderFlags(cmd)
	cmd.Flags().StringVarP(&o.dir, "out", "o", "archload-demo", "folder `DIR` for pictures and tables")
	return cmd
}

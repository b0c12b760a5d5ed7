package main

import (
	"path/filepath"

	"archload/viz"

	"github.com/spf13/cobra"
)

func newDemo() *cobra.Command {
	var dir string
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Solve the bundled comparison and write its pictures: the place to start",
		Long: "Solve the course guitar with the apex on the centre line and 22 mm to the treble, each\n" +
			"with a tight foot and with 0.12 mm of relief; print them side by side; write pictures.",
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			args := []string{"course-guitar", "course-guitar-treble", "course-guitar-relief", "course-guitar-treble-relief"}
			cmp, sols, err := compareCases(cmd, args)
			if err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			if err := cmp.Write(out); err != nil {
				return err
			}
			for i, s := range sols {
				if err := writePictures(out, filepath.Join(dir, args[i]), viz.Pictures(s, cmp.Reports[i]), true); err != nil {
					return err
				}
			}
			if err := writePictures(out, filepath.Join(dir, "demo"), viz.ComparePictures(sols, cmp), true); err != nil {
				return err
			}
			return checkedAll(cmp)
		},
	}
	cmd.Flags().StringVarP(&dir, "out", "o", "archload-demo", "folder for the pictures")
	return cmd
}

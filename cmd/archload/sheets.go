package main

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz/sheet"
)

func newSheets(d *disk.Disk) *cobra.Command {
	var paper, dir string
	var every float64
	cmd := &cobra.Command{
		Use:   "sheets CASE",
		Short: "Draw a design in true size for the bench: plan, graduation, templates, braces, holes, foot",
		Long: "Draw a design in true size, as SVG in one piece and as PDF for your paper: the plan with\n" +
			"the contours of the arch (a hollow has strokes), the graduation map, templates to cut out\n" +
			"for the arch across, along and inside, the braces with their glue faces, the sound holes,\n" +
			"and the bridge's foot with the curves it is fitted to and the relief to take from under\n" +
			"it. What is larger than the paper comes on several sheets with laps and register marks.\n" +
			"Every drawing has a square of 100 mm and every sheet a bar of 100 mm: measure them before\n" +
			"you cut.\n\n" +
			"Nothing is solved for it.",
		Example:           "  archload sheets course-guitar -o bench\n  archload sheets mine/mine.toml --paper letter --every 40",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := checkPaper(paper); err != nil {
				return err
			}
			if cmd.Flags().Changed("every") && !(every >= 5 && every <= 500) {
				return shell.Usagef("--every: want 5 to 500 mm, found %g", every)
			}
			tell, done := shell.Progress(cmd.ErrOrStderr())
			tell(fileStem(args[0]) + ": drawing")
			sheets, err := draw(d, args[0], sheet.Options{Paper: sheet.Paper(paper), Every: every})
			done()
			if err != nil {
				return err
			}
			var files []output
			for _, s := range sheets {
				files = append(files, output{filepath.Join(dir, fileStem(args[0])+"-"+s.Name), s.Formats(), s.Write})
			}
			for _, w := range sheets[0].Warnings {
				fmt.Fprintf(cmd.ErrOrStderr(), "warning: %s\n", w)
			}
			return writeAll(cmd, d, cmd.OutOrStdout(), files)
		},
	}
	cmd.Flags().StringVarP(&dir, "out", "o", ".", "write the sheets into the folder `DIR`")
	cmd.Flags().StringVar(&paper, "paper", string(sheet.A4), "`PAPER` of the PDF: a4, letter, or roll (one page as large as the drawing)")
	cmd.Flags().Float64Var(&every, "every", 0, "from one cross-arch template to the next, `MM` (default: where the case has templates, else 50)")
	return cmd
}

// draw draws the sheets of a case.
func draw(d *disk.Disk, arg string, o sheet.Options) ([]*sheet.Sheet, error) {
	c, err := openCase(d, arg)
	if err != nil {
		return nil, err
	}
	return sheet.Of(c, o)
}

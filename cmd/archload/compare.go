package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"archload/cases"
	"archload/viz"

	"github.com/spf13/cobra"
)

// mostCases is how many columns a table can show side by side.
const mostCases = 8

func newCompare() *cobra.Command {
	var o wanted
	cmd := &cobra.Command{
		Use:   "compare CASE CASE...",
		Short: "Solve several cases and set the same numbers side by side",
		Long: "Solve two to eight cases and print what differs in the input, then the same numbers\n" +
			"side by side, each with its difference from the first case.",
		Example:           "  archload compare course-guitar course-guitar-relief",
		Args:              takes(2, mostCases, fmt.Sprintf("2 to %d cases", mostCases)),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			return o.compare(cmd, args, "compare")
		},
	}
	o.flags(cmd)
	return cmd
}

// compare solves the cases one after the other, each on all cores, and
// delivers them side by side; name begins the names of the common pictures.
func (o *wanted) compare(cmd *cobra.Command, args []string, name string) error {
	var sols []*cases.Solution
	var reps []*cases.Report
	for _, a := range args {
		sol, rep, err := o.solve(cmd, a)
		if err != nil {
			return ofCase(a, err)
		}
		sols, reps = append(sols, sol), append(reps, rep)
	}
	cmp := cases.Compare(args, sols, reps)
	files := pictureFiles(filepath.Join(o.dir, name), viz.ComparePictures(sols, cmp))
	for i, stem := range stems(args) {
		files = append(files, resultFiles(filepath.Join(o.dir, stem), sols[i], reps[i])...)
	}
	if err := o.deliver(cmd, cmp, cmp.Write, files); err != nil {
		return err
	}
	return checked(args, reps...)
}

// ofCase says which of several cases an error belongs to, unless it says so
// itself or belongs to the command line.
func ofCase(name string, err error) error {
	var usage usageError
	if errors.As(err, &usage) || strings.HasPrefix(err.Error(), name+":") {
		return err
	}
	return fmt.Errorf("%s: %w", name, err)
}

// stems names the files of each case; cases of the same name get their letter
// in the table as well.
func stems(args []string) []string {
	count := map[string]int{}
	for _, a := range args {
		count[fileStem(a)]++
	}
	out := make([]string, len(args))
	for i, a := range args {
		out[i] = fileStem(a)
		if count[out[i]] > 1 {
			out[i] += fmt.Sprintf("-%c", 'A'+i)
		}
	}
	return out
}

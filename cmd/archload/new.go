package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"archload/cases"

	"github.com/spf13/cobra"
)

func newNew() *cobra.Command {
	var from string
	cmd := &cobra.Command{
		Use:   "new NAME",
		Short: "Copy a bundled case with its tables, to start a design of your own",
		Args:  cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			files, err := cases.Copy(from, filepath.Base(args[0]))
			if err != nil {
				return err
			}
			dir := args[0]
			if _, err := os.Lstat(dir); err == nil {
				return usageError{fmt.Errorf("new: %s is already there; choose another name", dir)}
			}
			if err := makeDir(dir); err != nil {
				return err
			}
			for _, f := range files {
				name := filepath.Join(dir, f.Name)
				if err := writeFile(name, nil, func(w io.Writer) error { _, err := w.Write(f.Data); return err }); err != nil {
					return err
				}
				fmt.Fprintf(cmd.OutOrStdout(), "wrote %s\n", name)
			}
			fmt.Fprintf(cmd.OutOrStdout(), "next: archload check %s\n", filepath.Join(dir, files[0].Name))
			return nil
		},
	}
	cmd.Flags().StringVar(&from, "from", "first", "bundled case to copy (archload cases lists them)")
	return cmd
}

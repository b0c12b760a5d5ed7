package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"archload/cases"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

func newNew() *cobra.Command {
	var from string
	cmd := &cobra.Command{
		Use:   "new NAME",
		Short: "Copy a bundled case with its tables, to start a design of your own",
		Long: "Make the folder NAME with the case NAME.toml in it: a copy of a bundled case, with its\n" +
			"tables and the case it starts from. A folder or file that is there is never touched.",
		Example: "  archload new mine\n  archload new my-guitar --from course-guitar",
		Args:    takes(1, 1, "one name"),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir := strings.TrimSuffix(filepath.Clean(args[0]), ".toml")
			files, err := copyOf(from, filepath.Base(dir))
			if err != nil {
				return err
			}
			if err := makeCase(dir, files); err != nil {
				return err
			}
			var b strings.Builder
			for _, f := range files {
				fmt.Fprintf(&b, "wrote %s\n", filepath.Join(dir, f.Name))
			}
			fmt.Fprintf(&b, "next: archload check %s\n", typed(filepath.Join(dir, files[0].Name)))
			_, err = fmt.Fprint(cmd.OutOrStdout(), b.String())
			return err
		},
	}
	cmd.Flags().StringVar(&from, "from", "first", "bundled `CASE` to copy (archload cases lists them)")
	// The flag exists, so this cannot fail.
	_ = cmd.RegisterFlagCompletionFunc("from", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return bundledNames(), cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

// copyOf returns the files of a bundled case under a new name.
func copyOf(from, name string) ([]cases.File, error) {
	if why := badName(name); why != "" {
		return nil, shell.Usagef("new: want a name for a folder, found %q: %s", name, why)
	}
	files, err := cases.Copy(from, name)
	if err != nil {
		return nil, err
	}
	for _, f := range files[1:] {
		if f.Name == files[0].Name {
			return nil, shell.Usagef("new: %s starts from a case that is called %s itself; choose another name", from, f.Name)
		}
	}
	return files, nil
}

// makeCase makes the folder of a case whole or not at all: it is filled beside
// its place and renamed.
func makeCase(dir string, files []cases.File) error {
	if _, err := os.Lstat(dir); err == nil {
		return shell.Usagef("new: %s is already there; choose another name", dir)
	}
	if err := disk.Make(filepath.Dir(dir)); err != nil {
		return err
	}
	part, err := os.MkdirTemp(filepath.Dir(dir), ".archload-*")
	if err == nil {
		err = fill(part, files)
	}
	if err == nil {
		err = os.Rename(part, dir)
	}
	if err != nil {
		_ = os.RemoveAll(part) // the first error is the one to tell
		return fmt.Errorf("cannot make the folder %s: %w", dir, disk.Cause(err))
	}
	return nil
}

func fill(dir string, files []cases.File) error {
	for _, f := range files {
		if err := os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o644); err != nil {
			return err
		}
	}
	return os.Chmod(dir, 0o755)
}

// typed is a file's name as a shell wants it: in quotes, if it has a blank or another
// sign that shells take for their own.
func typed(name string) string {
	if strings.ContainsAny(name, " \t'\"$&();<>|*?`\\!#~") {
		return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
	}
	return name
}

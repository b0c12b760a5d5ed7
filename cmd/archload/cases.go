package main

import (
	"fmt"
	"io"
	"strings"

	"archload/cases"

	"github.com/spf13/cobra"
)

func newCases() *cobra.Command {
	return &cobra.Command{
		Use:   "cases",
		Short: "List the bundled cases",
		Long:  "List the bundled cases. Each can be solved by its name and copied with archload new.",
		Args:  takes(0, 0, "no argument"),
		RunE:  func(cmd *cobra.Command, _ []string) error { return listCases(cmd.OutOrStdout()) },
	}
}

func listCases(w io.Writer) error {
	infos, err := cases.Bundled()
	if err != nil {
		return err
	}
	var b strings.Builder
	for _, i := range infos {
		fmt.Fprintf(&b, "%s: %s\n%s\n", i.Name, i.Title, wrapped(i.Shows))
	}
	b.WriteString("archload solve NAME answers one; archload new MINE --from NAME copies it for a design of your own.\n")
	_, err = io.WriteString(w, b.String())
	return err
}

// wrapped breaks a paragraph into indented lines that a terminal holds.
func wrapped(text string) string {
	const indent, width = "    ", 88
	var b strings.Builder
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(indent)+len(line)+1+len(word) > width {
			b.WriteString(indent + line + "\n")
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	b.WriteString(indent + line + "\n")
	return b.String()
}

package main

import (
	"fmt"
	"io"
	"strings"

	"archload/materials"

	"github.com/spf13/cobra"
)

func newWood() *cobra.Command {
	return &cobra.Command{
		Use:   "wood [NAME]",
		Short: "List the wood cards, or print one with the source of each value",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listWoods(cmd.OutOrStdout())
			}
			card, err := materials.Find(args[0])
			if err != nil {
				return usageError{fmt.Errorf("wood: %w", err)}
			}
			return printWood(cmd.OutOrStdout(), card)
		},
	}
}

func listWoods(w io.Writer) error {
	cards, err := materials.Cards()
	if err != nil {
		return err
	}
	fmt.Fprintf(w, "%-22s %-26s %8s %8s %8s\n", "name", "used for", "kg/m3", "EL MPa", "ER MPa")
	for _, c := range cards {
		fmt.Fprintf(w, "%-22s %-26s %8.0f %8.0f %8.0f\n", c.Name, strings.Join(c.Uses, ", "), c.Wood.Density, c.Wood.EL, c.Wood.ER)
	}
	_, err = fmt.Fprint(w, "\nMeans of clear wood at about 12 % moisture; boards scatter (stiffness by 22 %).\n"+
		"archload wood NAME prints the source of every value.\n")
	return err
}

func printWood(w io.Writer, c materials.Card) error {
	fmt.Fprintf(w, "%s: %s\nused for: %s\n", c.Name, c.Title, strings.Join(c.Uses, ", "))
	if c.Note != "" {
		fmt.Fprintf(w, "%s\n", c.Note)
	}
	fmt.Fprintln(w)
	for _, e := range c.Entries() {
		mark := ""
		if e.Source.Mark != "" {
			mark = " [" + e.Source.Mark + "]"
		}
		fmt.Fprintf(w, "  %-20s %9.4g %-6s %s%s\n", e.Key, e.Value, e.Unit, e.Source.Text, mark)
	}
	_, err := fmt.Fprint(w, "\nMeans of clear, straight-grained wood, not design values: test your own billet.\n")
	return err
}

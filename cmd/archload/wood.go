package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"archload/cmd/internal/shell"
	"archload/materials"

	"github.com/spf13/cobra"
)

func newWood() *cobra.Command {
	return &cobra.Command{
		Use:               "wood [NAME]",
		Short:             "List the wood cards, or print one with the source of each value",
		Example:           "  archload wood\n  archload wood sitka-spruce",
		Args:              takes(0, 1, "at most one name"),
		ValidArgsFunction: completeWoods,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listWoods(cmd.OutOrStdout())
			}
			card, err := materials.Find(args[0])
			if err != nil {
				return shell.Usagef("wood: %w", err)
			}
			return printWood(cmd.OutOrStdout(), card)
		},
	}
}

func completeWoods(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	cards, err := materials.Cards()
	if err != nil || len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var names []string
	for _, c := range cards {
		names = append(names, c.Name)
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}

func listWoods(w io.Writer) error {
	cards, err := materials.Cards()
	if err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%-22s %-26s %8s %8s %8s\n", "name", "used for", "kg/m3", "EL MPa", "ER MPa")
	for _, c := range cards {
		fmt.Fprintf(&b, "%-22s %-26s %8.0f %8.0f %8.0f\n", c.Name, strings.Join(c.Uses, ", "), c.Wood.Density, c.Wood.EL, c.Wood.ER)
	}
	b.WriteString("\nMeans of clear wood at about 12 % moisture; boards scatter (stiffness by 22 %).\n" +
		"archload wood NAME prints the source of every value.\n")
	_, err = io.WriteString(w, b.String())
	return err
}

// short writes a number to four figures, or to the unit where that is more.
func short(v float64) string {
	if math.Abs(v) >= 1000 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.4g", v)
}

func printWood(w io.Writer, c materials.Card) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\nused for: %s\n", c.Name, c.Title, strings.Join(c.Uses, ", "))
	if c.Note != "" {
		fmt.Fprintf(&b, "%s\n", c.Note)
	}
	b.WriteByte('\n')
	for _, e := range c.Entries() {
		mark := ""
		if e.Source.Mark != "" {
			mark = " [" + e.Source.Mark + "]"
		}
		fmt.Fprintf(&b, "  %-20s %9s %-6s %s%s\n", e.Key, short(e.Value), e.Unit, e.Source.Text, mark)
	}
	b.WriteString("\nMeans of clear, straight-grained wood, not design values: test your own billet.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

package main

import (
	"fmt"
	"io"
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/materials"

	"github.com/spf13/cobra"
)

func newWood(d *disk.Disk) *cobra.Command {
	return &cobra.Command{
		Use:   "wood [NAME]",
		Short: "List the wood cards, or print one with the source of each value",
		Long: "List the bundled wood cards, or print one with the source of each value. The name of a\n" +
			"case's file prints the woods of that case, its own ones among them.",
		Example:           "  archload wood\n  archload wood sitka-spruce\n  archload wood mine/mine.toml",
		Args:              takes(0, 1, "at most one name"),
		ValidArgsFunction: completeWoods,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listWoods(cmd.OutOrStdout())
			}
			if filepath.Ext(args[0]) == ".toml" {
				return printWoodsOf(d, cmd.OutOrStdout(), args[0])
			}
			card, err := materials.Find(args[0])
			if err != nil {
				return shell.Usagef("wood: %w", err)
			}
			return printWood(cmd.OutOrStdout(), card)
		},
	}
}

// printWoodsOf prints each wood of a case once.
func printWoodsOf(d *disk.Disk, w io.Writer, file string) error {
	c, err := openCase(d, file)
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for _, key := range slices.Sorted(maps.Keys(c.Cards)) {
		card := c.Cards[key]
		if seen[card.Name] {
			continue
		}
		if len(seen) > 0 {
			fmt.Fprintln(w)
		}
		seen[card.Name] = true
		if err := printWood(w, card); err != nil {
			return err
		}
	}
	return nil
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
	fmt.Fprint(&b, marksExplained(c))
	b.WriteString("\nMeans of clear, straight-grained wood, not design values: test your own billet.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// marksExplained says what the marks of a card's sources mean.
func marksExplained(c materials.Card) string {
	marks := map[string]string{
		materials.MarkMemory:   "the value is in the source named, but was written down without the book at hand: look it up before you rely on it",
		materials.MarkBorrowed: "nobody published it for this wood; it is that of a related one",
	}
	out := ""
	for _, mark := range []string{materials.MarkMemory, materials.MarkBorrowed} {
		has := func(e materials.Entry) bool { return e.Source.Mark == mark }
		if slices.ContainsFunc(c.Entries(), has) {
			out += fmt.Sprintf("\n  [%s]: %s.", mark, marks[mark])
		}
	}
	if out != "" {
		out += "\n"
	}
	return out
}

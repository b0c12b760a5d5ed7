package main

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/glossary"
	"archload/cases/keylist"
	"archload/cases/say"
	"archload/cases/tree"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

func newKeys() *cobra.Command {
	return &cobra.Command{
		Use:   "keys [WORD]",
		Short: "List the keys of a case file, or explain those that a word names",
		Long: "List every key of a case file with its meaning, unit and default. With a word, explain the\n" +
			"keys of that name, or of that table, or that speak of it, each with its range and an example.",
		Example:           "  archload keys\n  archload keys fret_plane\n  archload keys bridge.relief\n  archload keys tailpiece",
		Args:              takes(0, 1, "at most one word"),
		ValidArgsFunction: completeKeys,
		RunE: func(cmd *cobra.Command, args []string) error {
			tables, err := keylist.All()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return say.WriteKeys(cmd.OutOrStdout(), tables)
			}
			return explainKeys(cmd.OutOrStdout(), tables, args[0])
		},
	}
}

// explainKeys explains the keys that a word names.
func explainKeys(w io.Writer, tables []keylist.Table, word string) error {
	found := keylist.Named(tables, word)
	if len(found) > 0 {
		return say.WriteKeyEntries(w, found)
	}
	if like := tree.Nearest(word, keyNames(tables)); like != "" {
		return shell.Usagef("keys: no key %q; did you mean %q?", word, like)
	}
	return shell.Usagef("keys: no key %q, and none that speaks of it; archload keys lists all", word)
}

func completeKeys(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	tables, err := keylist.All()
	if err != nil || len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var out []string
	for _, t := range tables {
		for _, k := range t.Keys {
			out = append(out, k.Path+"\t"+fmt.Sprintf("%.60s", strings.TrimSpace(k.What)))
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}

// keyNames lists the names of keys.
func keyNames(tables []keylist.Table) []string {
	var out []string
	for _, t := range tables {
		for _, k := range t.Keys {
			out = append(out, k.Name)
		}
	}
	return out
}

func newWords() *cobra.Command {
	return &cobra.Command{
		Use:   "words [WORD]",
		Short: "Explain the words in which answers are printed",
		Long: "List every term of the summaries, tables and reports with what it means. With a word,\n" +
			"explain the terms of that name, or that speak of it. (archload keys explains the keys of a case.)",
		Example: "  archload words\n  archload words bedding\n  archload words \"rolling shear\"",
		Args:    takes(0, -1, "a word or none"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return termNames(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return explainWords(cmd.OutOrStdout(), strings.Join(args, " "))
		},
	}
}

// explainWords explains the terms that a word names; all without one.
func explainWords(w io.Writer, word string) error {
	terms := glossary.All()
	if word != "" {
		terms = glossary.Named(word)
	}
	if len(terms) == 0 {
		if like := tree.Nearest(word, termNames()); like != "" {
			return shell.Usagef("words: no word %q; did you mean %q?", word, like)
		}
		return shell.Usagef("words: no word %q, and none that speaks of it; archload words lists all", word)
	}
	if err := say.WriteTerms(w, terms); err != nil {
		return fmt.Errorf("words: %w", err)
	}
	return nil
}

// termNames lists the names of all terms.
func termNames() []string {
	var out []string
	for _, t := range glossary.All() {
		out = append(out, t.Name)
	}
	return out
}

package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"unicode/utf8"

	"archload/cases/verify"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

// proof is what `archload verify` is asked for.
type proof struct {
	disk   *disk.Disk
	json   string
	only   string
	refine bool
}

func newVerify(d *disk.Disk) *cobra.Command {
	o := proof{disk: d}
	cmd := &cobra.Command{
		Use:   "verify",
		Short: "Run the published checks: what this program computes beside textbooks and papers",
		Long: "Run the published checks: shells, plates, wood, braces, contact, strings, geometry and\n" +
			"whole cases, each beside a value from outside this program, with its source, the\n" +
			"deviation and what is allowed. Nothing is needed but the program itself.",
		Example: "  archload verify\n  archload verify --only 'hemisphere|contact'\n  archload verify --refine",
		Args:    takes(0, 0, "no argument"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			rows, err := o.run(cmd)
			if err != nil {
				return err
			}
			if err := o.deliver(cmd.OutOrStdout(), rows); err != nil {
				return err
			}
			return verdict(rows)
		},
	}
	cmd.Flags().StringVar(&o.json, "json", "", "write all rows as JSON to `FILE` (\"-\": standard output, in place of the text)")
	cmd.Flags().StringVar(&o.only, "only", "", "run the checks whose name, quantity or mesh matches `PATTERN`, a regular expression")
	cmd.Flags().BoolVar(&o.refine, "refine", false, "coarser and finer meshes too, and the observed order of convergence (some minutes)")
	return cmd
}

// run runs the checks, telling its progress.
func (o *proof) run(cmd *cobra.Command) ([]verify.Row, error) {
	if _, err := regexp.Compile(o.only); err != nil {
		return nil, shell.Usagef("--only: want a regular expression, found %q: %w", o.only, err)
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	rows, err := verify.Run(cmd.Context(), verify.Options{
		Only: o.only, Refine: o.refine, Workers: runtime.NumCPU(), Progress: tell,
	})
	done()
	if errors.Is(err, verify.ErrNothing) {
		return nil, shell.Usagef("--only: want a pattern that a check matches, found %q", o.only)
	}
	return rows, err
}

// proofReport is the JSON of a run.
type proofReport struct {
	Format int          `json:"format"`
	Units  string       `json:"units"`
	Count  int          `json:"count"`
	Missed int          `json:"missed"`
	Checks []verify.Row `json:"checks"`
}

func (o *proof) deliver(out io.Writer, rows []verify.Row) error {
	if o.json != "" {
		rep := proofReport{Format: 1, Units: "each row its own", Count: len(rows), Missed: len(missed(rows)), Checks: rows}
		if err := writeTo(o.disk, o.json, out, jsonOf(rep)); err != nil {
			return err
		}
	}
	if o.json == "-" {
		return nil
	}
	_, err := io.WriteString(out, proofText(rows)+trendText(rows)+proofCount(rows))
	return err
}

// verdict turns missed checks into the error that sets the exit status.
func verdict(rows []verify.Row) error {
	if n := len(missed(rows)); n > 0 {
		return shell.CheckError{What: fmt.Sprintf("%d of %s missed", n, counted(len(rows), "check"))}
	}
	return nil
}

func missed(rows []verify.Row) []verify.Row {
	var bad []verify.Row
	for _, r := range rows {
		if !r.Pass {
			bad = append(bad, r)
		}
	}
	return bad
}

// whatWide is the width of the first column.
const whatWide = 62

// proofText is one row for each check, under the name and the source of its
// problem.
func proofText(rows []verify.Row) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %-14s %12s %12s %9s %9s\n", padded("check (source)", whatWide), "mesh", "expected", "got", "deviation", "allowed")
	head := ""
	for _, r := range rows {
		if h := r.Name + " (" + r.By + ")"; h != head {
			head = h
			fmt.Fprintf(&b, "%s\n", head)
		}
		what := "  " + r.Quantity
		if r.Unit != "1" {
			what += ", " + r.Unit
		}
		verdict := "ok"
		if !r.Pass {
			verdict = "MISSES"
		}
		want, deviation, allowed := proofNumbers(r)
		fmt.Fprintf(&b, "%s %-14s %12s %12s %9s %9s  %s\n", padded(what, whatWide), r.Mesh, want, figures(r.Got), deviation, allowed, verdict)
	}
	return b.String()
}

// proofNumbers writes expected, deviation and allowed.
func proofNumbers(r verify.Row) (want, deviation, allowed string) {
	switch {
	case r.Bound == "most":
		return "<= " + figures(r.Expected), "-", "-"
	case r.Bound == "least":
		return ">= " + figures(r.Expected), "-", "-"
	case r.Absolute:
		return figures(r.Expected), fmt.Sprintf("%.1e", r.Deviation), fmt.Sprintf("%.0e", r.Allowed)
	}
	return figures(r.Expected), percent(r.Deviation), strings.TrimPrefix(percent(r.Allowed), "+")
}

// percent writes a relative number; below a hundredth of a percent by its power
// of ten.
func percent(v float64) string {
	if p := 100 * v; math.Abs(p) >= 0.005 {
		return strings.TrimSuffix(strings.TrimSuffix(fmt.Sprintf("%+.2f", p), "0"), ".0") + " %"
	}
	return fmt.Sprintf("%+.0e", v)
}

// figures writes a number to six figures.
func figures(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// padded fills a text with spaces, counting characters.
func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(s)))
}

// trendText is the deviation by mesh density; empty without --refine.
func trendText(rows []verify.Row) string {
	var b strings.Builder
	for _, r := range rows {
		if len(r.Trend) == 0 {
			continue
		}
		if b.Len() == 0 {
			b.WriteString("\nDeviation by mesh density (divisions, or length of the edges), and the observed order of convergence\n")
		}
		kind := strings.TrimLeft(r.Mesh, "0123456789 ")
		if strings.HasPrefix(kind, "edges") {
			kind = "own mesh"
		}
		fmt.Fprintf(&b, "%s %-10s", padded(r.Name+": "+r.Quantity, whatWide+24), kind)
		for _, s := range r.Trend {
			fmt.Fprintf(&b, " %5s:%9s", s.Mesh, trendNumber(r, s))
		}
		if r.Order.Known() {
			fmt.Fprintf(&b, "  order %.1f", float64(r.Order))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func trendNumber(r verify.Row, s verify.Step) string {
	if r.Bound != "" {
		return fmt.Sprintf("%.2f", s.Got)
	}
	return percent(s.Deviation)
}

// counted writes a number of things.
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// proofCount ends the table.
func proofCount(rows []verify.Row) string {
	bad := missed(rows)
	if len(bad) == 0 {
		return fmt.Sprintf("\n%s, all within what is allowed\n", counted(len(rows), "check"))
	}
	var b strings.Builder
	fmt.Fprintf(&b, "\n%s, %d missed:\n", counted(len(rows), "check"), len(bad))
	for _, r := range bad {
		fmt.Fprintf(&b, "  %s: %s %s\n", r.Name, r.Quantity, r.Mesh)
	}
	return b.String()
}

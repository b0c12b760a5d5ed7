package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"strings"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/lesson"
	"archload/cases/tree"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

func newLesson(d *disk.Disk) *cobra.Command {
	var jsonFile string
	cmd := &cobra.Command{
		Use:   "lesson [LESSON]",
		Short: "List the lessons, or hold every claim of one to the solve",
		Long: "Without a name, list the bundled lessons. With one, or with the file of a lesson of\n" +
			"your own, list its steps with their captions, solve every design that they show, and\n" +
			"hold each number in braces to what was computed. The window shows a lesson\n" +
			"(archview --lesson); docs/lessons.md says how to write one.",
		Example:           "  archload lesson\n  archload lesson 2-relief\n  archload lesson mine/lesson.toml",
		Args:              takes(0, 1, "at most one lesson"),
		ValidArgsFunction: completeLessons,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listLessons(cmd.OutOrStdout())
			}
			l, err := openLesson(d, args[0])
			if err == nil {
				err = spare(d, jsonFile)
			}
			if err != nil {
				return err
			}
			tell, done := shell.Progress(cmd.ErrOrStderr())
			k := lesson.NewChecker(d, design.Options{Workers: runtime.NumCPU(), Progress: tell})
			p, err := checkLesson(cmd.Context(), k, l)
			done()
			if err != nil {
				return err
			}
			if err := p.deliver(d, jsonFile, cmd.OutOrStdout()); err != nil {
				return err
			}
			return p.outcome(k.Failed())
		},
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write steps and claims as JSON to `FILE` (\"-\": standard output, in place of the text)")
	return cmd
}

// openLesson opens a bundled lesson by its name, or a lesson file.
func openLesson(d *disk.Disk, arg string) (*lesson.Lesson, error) {
	l, err := lesson.Open(d, filepath.ToSlash(arg))
	if err == nil {
		return l, nil
	}
	if file := meant(arg); file != "" {
		return nil, shell.Usagef("%s is not the name of a bundled lesson; did you mean the file %s?", arg, file)
	}
	return nil, err
}

// completeLessons offers the bundled lessons and the files here.
func completeLessons(_ *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	infos, err := lesson.Bundled()
	if err != nil || len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var names []string
	for _, i := range infos {
		names = append(names, i.Name)
	}
	files, _ := filepath.Glob(typed + "*.toml") // the pattern's only fault is an odd file name, which offers nothing
	return append(names, files...), cobra.ShellCompDirectiveDefault
}

func listLessons(w io.Writer) error {
	infos, err := lesson.Bundled()
	if err != nil {
		return err
	}
	var b strings.Builder
	for _, i := range infos {
		fmt.Fprintf(&b, "%s: %s (%d steps)\n%s", i.Name, i.Title, i.Steps, wrapped(i.About))
	}
	b.WriteString("\narchload lesson NAME checks one; archview --lesson NAME shows it.\n")
	_, err = io.WriteString(w, b.String())
	return err
}

// lessonReport is the JSON of a checked lesson.
type lessonReport struct {
	Format int          `json:"format"`
	Units  string       `json:"units"`
	Title  string       `json:"title"`
	About  string       `json:"about"`
	Claims int          `json:"claims"`
	Missed int          `json:"missed"`
	Steps  []lessonStep `json:"steps"`

	faults tree.Faults // why claims do not hold
}

// lessonStep is one step of it.
type lessonStep struct {
	Shows   string        `json:"shows"`
	Caption string        `json:"caption"`
	Caution string        `json:"caution,omitempty"`
	Claims  []lessonClaim `json:"claims"`
}

// lessonClaim is a claim beside what was computed for it.
type lessonClaim struct {
	Words    string     `json:"words"`
	Of       string     `json:"of"`
	Least    float64    `json:"least"`
	Most     float64    `json:"most"`
	Computed answer.Num `json:"computed"`
	Holds    bool       `json:"holds"`
}

// checkLesson solves a lesson and gathers what came of its claims.
func checkLesson(ctx context.Context, k *lesson.Checker, l *lesson.Lesson) (*lessonReport, error) {
	p := &lessonReport{Format: 1, Units: "each claim in that of its words", Title: l.Title, About: l.About}
	for i := range l.Steps {
		s := &l.Steps[i]
		found, err := k.Check(ctx, s)
		if err != nil {
			return nil, err
		}
		step := lessonStep{Shows: s.Shown(), Caption: s.Caption, Caution: s.Caution, Claims: []lessonClaim{}}
		for _, f := range found {
			step.Claims = append(step.Claims, lessonClaim{f.Claim.Words, f.Claim.Of, f.Claim.Least, f.Claim.Most, answer.Num(f.Computed), f.Fault == nil})
			if f.Fault != nil {
				p.faults = append(p.faults, f.Fault)
			}
		}
		p.Claims += len(found)
		p.Steps = append(p.Steps, step)
	}
	p.Missed = len(p.faults)
	return p, nil
}

func (p *lessonReport) deliver(d *disk.Disk, jsonFile string, out io.Writer) error {
	if jsonFile != "" {
		if err := writeTo(d, jsonFile, out, jsonOf(p)); err != nil {
			return err
		}
	}
	if jsonFile == "-" {
		return nil
	}
	_, err := io.WriteString(out, p.text())
	return err
}

// text lists the steps, and under each its claims.
func (p *lessonReport) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s", p.Title, wrapped(p.About))
	for i, s := range p.Steps {
		fmt.Fprintf(&b, "\nstep %d: %s\n%s", i+1, s.Shows, wrapped(s.Caption))
		if s.Caution != "" {
			b.WriteString(wrapped("Caution: " + s.Caution))
		}
		for _, c := range s.Claims {
			fmt.Fprintf(&b, "    %s\n", c.line())
		}
	}
	switch {
	case p.Claims == 0:
		b.WriteString("\nno claims to check\n")
	case p.Missed == 0:
		fmt.Fprintf(&b, "\n%s, all hold\n", counted(p.Claims, "claim"))
	default:
		fmt.Fprintf(&b, "\n%s, %d not so\n", counted(p.Claims, "claim"), p.Missed)
	}
	return b.String()
}

// line is a claim as it is printed under its step.
func (c lessonClaim) line() string {
	verdict := "ok"
	if !c.Holds {
		verdict = "NOT SO"
	}
	computed := "cannot be had"
	if c.Computed.Known() {
		computed = "computed " + figures(float64(c.Computed))
	}
	return fmt.Sprintf("%-6s  %s = %s: %s", verdict, c.Words, c.Of, computed)
}

// outcome turns claims that do not hold and built-in checks that failed into
// the error that sets the exit status.
func (p *lessonReport) outcome(failed []string) error {
	switch {
	case len(failed) > 0:
		return shell.CheckError{What: strings.Join(failed, ", ")}
	case len(p.faults) > 0:
		return shell.ClaimError{Err: p.faults}
	}
	return nil
}

package report

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"archload/cases/answer"
	"archload/cases/bench/effect"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/cases/study"

	"archload/viz"
)

// reportDoc is the report as the template sees it.
type reportDoc struct {
	Title   string
	Version string
	Style   template.CSS
	Side    []reportSection // the comparison; none for one design
	Parts   []reportPart
	Back    []reportSection // what is the same for all, and the cases themselves
}

// reportPart is one design.
type reportPart struct {
	ID       string
	Letter   string // "A: ", or nothing for a single design
	Title    string
	Name     string
	Failed   []string // built-in checks that failed
	Ranges   string   // what they cover; nothing if that stands before all designs
	Lead     []string // the answers in words
	Advice   []string // what to do with them
	Sections []reportSection
}

// reportSection is one heading with what stands below it.
type reportSection struct {
	Title   string
	Lead    bool // set off, as the answers are
	Words   []string
	List    []string
	Tables  []reportTable
	Figures []reportFigure
	Codes   []reportCode
	Keys    []reportKey
}

// reportKey is a key of a case as it was computed.
type reportKey struct {
	Key, Value string
	Default    bool
}

// reportTable has its first column as words, the others as numbers, unless
// Words is set.
type reportTable struct {
	Caption string
	Head    []string
	Rows    [][]string
	Words   bool
	Close   bool // smaller, for many columns
}

// reportFigure is a picture inside the file.
type reportFigure struct {
	Source  template.HTMLAttr // src="data:...", so that its + stays a +
	Alt     string
	Caption string
	Tall    bool // higher than wide: two of them share a printed page
}

// reportCode is a text file.
type reportCode struct{ Name, Text string }

// Input is what a printed report is made from: one design, or several
// with their comparison.
type Input struct {
	Names      []string // what the user called them
	Solutions  []*design.Solution
	Reports    []*answer.Report
	Spreads    []*study.Spread     // behind the ranges; nil leaves them out
	Comparison *study.Comparison   // needed for more than one design
	Effects    []*effect.Report    // what measurements did to each design; nil, or nil for one, where nothing was measured
	Stands     []*stability.Stands // how each stands on its moved shape; nil, or nil for one, where that was not asked
	Version    string              // of the program
}

// spread is that of design i, if there is one.
func (in Input) spread(i int) *study.Spread {
	if in.Spreads == nil {
		return nil
	}
	return in.Spreads[i]
}

// effect is what measurements did to design i, if anything was measured.
func (in Input) effect(i int) *effect.Report {
	if in.Effects == nil {
		return nil
	}
	return in.Effects[i]
}

// stands is how design i stands on its moved shape, if that is known.
func (in Input) stands(i int) *stability.Stands {
	if in.Stands == nil {
		return nil
	}
	return in.Stands[i]
}

// embed draws a page into the file.
func embed(p viz.Page) (reportFigure, error) {
	pic, err := p.Bare()
	if err != nil {
		return reportFigure{}, fmt.Errorf("picture %s: %w", p.Name, err)
	}
	var b bytes.Buffer
	if err := pic.WriteCompact(&b); err != nil {
		return reportFigure{}, fmt.Errorf("picture %s: %w", p.Name, err)
	}
	return reportFigure{
		Source:  template.HTMLAttr(`src="data:image/svg+xml;charset=utf-8,` + inAddress().Replace(b.String()) + `"`),
		Alt:     p.Words,
		Caption: p.Words,
		Tall:    pic.Height > 0.8*pic.Width,
	}, nil
}

// inAddress writes an SVG as a part of an address inside an HTML attribute: the
// SVG's own quotes become single ones (those in its words are escaped already).
func inAddress() *strings.Replacer {
	return strings.NewReplacer("%", "%25", "#", "%23", "<", "%3C", "\"", "'", "&", "&amp;", "\n", "")
}

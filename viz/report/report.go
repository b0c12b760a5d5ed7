package report

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"archload/cases" // the page's template and style
	"archload/viz"
)

//go:embed report.html
var reportHTML string

//go:embed report.css
var reportCSS string

// Input is what a printed report is made from: one design, or several
// with their comparison.
type Input struct {
	Names      []string // what the user called them
	Solutions  []*cases.Solution
	Reports    []*cases.Report
	Spreads    []*cases.Spread   // behind the ranges; nil leaves them out
	Comparison *cases.Comparison // needed for more than one design
	Version    string            // of the program
}

// spread is that of design i, if there is one.
func (in Input) spread(i int) *cases.Spread {
	if in.Spreads == nil {
		return nil
	}
	return in.Spreads[i]
}

// Write writes a report as one HTML file that needs nothing beside it:
// answers in plain words with their ranges, pictures, tables, checks, what is
// left out, and the case itself. It fits A4 and Letter paper.
func Write(w io.Writer, in Input) error {
	t, err := template.New("report").Parse(reportHTML)
	if err != nil {
		return fmt.Errorf("report: %w", err)
	}
	doc := reportDoc{Version: in.Version, Style: template.CSS(reportCSS)}
	for i, s := range in.Solutions {
		a := cases.Answers(in.Reports[i], in.spread(i))
		d := design{name: in.Names[i], s: s, r: in.Reports[i], spread: in.spread(i), answers: a}
		part, err := d.part(i, len(in.Solutions))
		if err != nil {
			return fmt.Errorf("report: %s: %w", in.Names[i], err)
		}
		doc.Parts = append(doc.Parts, part)
	}
	doc.Title = doc.Parts[0].Title
	if len(doc.Parts) > 1 {
		doc.Title = fmt.Sprintf("%d designs side by side", len(doc.Parts))
		side, err := sideBySide(in)
		if err != nil {
			return fmt.Errorf("report: %w", err)
		}
		doc.Side = side
	}
	doc.Back = in.back()
	var b bytes.Buffer
	if err := t.Execute(&b, doc); err != nil {
		return fmt.Errorf("report: %w", err)
	}
	_, err = w.Write(b.Bytes())
	return err
}

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

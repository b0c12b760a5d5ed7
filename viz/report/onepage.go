package report

import (
	"bytes"
	_ "embed" // the page's template
	"fmt"
	"html/template"
	"io"

	"archload/cases/study"
	"archload/viz"
)

//go:embed onepage.html
var onePageHTML string

// onePage is one design on a page for somebody who wants to know what it does,
// not how that was found.
type onePage struct {
	Title    string
	Failed   []string
	Lead     []string
	Figures  []reportFigure
	Tables   []reportTable
	Cautions []string
	Note     string // of what it was computed, and what its ranges are
	Time     bool   // about seasons or years: its tables are wide
}

// Most of each on one page, so that it stays one.
const (
	pageAnswers  = 6
	pageNumbers  = 8
	pageCautions = 3
)

// WritePage writes a page for each design: its answers in plain words, how it
// sinks in plan and across, its measures, and what deserves a second look.
func WritePage(w io.Writer, in Input) error {
	var parts []onePage
	for i, s := range in.Solutions {
		d := subject{name: in.Names[i], s: s, r: in.Reports[i], spread: in.spread(i), answers: study.Answers(in.Reports[i], in.spread(i)), stands: in.stands(i)}
		page, err := d.onePage()
		if err != nil {
			return fmt.Errorf("report: %s: %w", in.Names[i], err)
		}
		parts = append(parts, page)
	}
	return writePages(w, in.Version, parts)
}

// writePages writes pages into one file.
func writePages(w io.Writer, version string, parts []onePage) error {
	t, err := template.New("page").Parse(onePageHTML)
	if err != nil {
		return fmt.Errorf("report: %w", err)
	}
	doc := struct {
		Title, Version string
		Style          template.CSS
		Parts          []onePage
	}{parts[0].Title, version, template.CSS(reportCSS), parts}
	var b bytes.Buffer
	if err := t.Execute(&b, doc); err != nil {
		return fmt.Errorf("report: %w", err)
	}
	_, err = w.Write(b.Bytes())
	return err
}

// onePage gathers the page of one design.
func (d *subject) onePage() (onePage, error) {
	p := onePage{Title: d.r.Title, Failed: d.r.Error.Failed(),
		Note: "from the drawing, before any wood was cut. The ranges cover wood and mesh only: wood scatters by a fifth and more."}
	if p.Title == "" {
		p.Title = d.name
	}
	lead := together(d.lead())
	p.Lead = lead[:min(len(lead), pageAnswers)]
	if d.stands != nil && len(lead) > pageAnswers {
		p.Lead[pageAnswers-1] = lead[len(lead)-1] // how it stands before where the edge holds it
	}
	for _, v := range viz.Pictures(d.s, d.r) {
		if v.Name != "sink" && v.Name != "cross-arch" {
			continue
		}
		f, err := embed(v)
		if err != nil {
			return p, err
		}
		p.Figures = append(p.Figures, f)
	}
	for _, s := range []reportSection{d.drawn(), d.certain()} {
		for _, t := range s.Tables {
			t.Rows = t.Rows[:min(len(t.Rows), pageNumbers)]
			p.Tables = append(p.Tables, t)
		}
	}
	p.Cautions = d.r.Warnings
	if n := len(p.Cautions); n > pageCautions {
		p.Cautions = append(p.Cautions[:pageCautions:pageCautions], fmt.Sprintf("and %d more; the whole report names them all", n-pageCautions))
	}
	return p, nil
}

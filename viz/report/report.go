package report

import (
	"bytes"
	_ "embed" // the page's template and style
	"fmt"
	"html/template"
	"io"
	"strings"

	"archload/cases/glossary"
	"archload/cases/study"
)

//go:embed report.html
var reportHTML string

//go:embed report.css
var reportCSS string

// Write writes a report as one HTML file that needs nothing beside it:
// answers in plain words with their ranges, pictures, tables, checks, what is
// left out, and the case itself. It fits A4 and Letter paper.
func Write(w io.Writer, in Input) error {
	t, err := template.New("report").Funcs(template.FuncMap{"hover": hover}).Parse(reportHTML)
	if err != nil {
		return fmt.Errorf("report: %w", err)
	}
	doc := reportDoc{Version: in.Version, Style: template.CSS(reportCSS)}
	for i, s := range in.Solutions {
		a := study.Answers(in.Reports[i], in.spread(i))
		d := subject{name: in.Names[i], s: s, r: in.Reports[i], spread: in.spread(i), answers: a, effect: in.effect(i), stands: in.stands(i)}
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

// hover marks the terms of a text, so that a pointer resting on one shows what it means.
func hover(text string) template.HTML {
	var b strings.Builder
	for _, p := range glossary.Marked(text) {
		if p.Means == "" {
			b.WriteString(template.HTMLEscapeString(p.Text))
			continue
		}
		fmt.Fprintf(&b, `<abbr title="%s">%s</abbr>`, template.HTMLEscapeString(p.Means), template.HTMLEscapeString(p.Text))
	}
	return template.HTML(b.String())
}

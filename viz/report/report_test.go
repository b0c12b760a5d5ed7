package report

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/study"
	"archload/viz"
)

// reportOf solves cases coarsely and reports them.
func reportOf(t *testing.T, names ...string) (Input, []byte) {
	t.Helper()
	in := Input{Names: names, Version: "of the test"}
	for _, n := range names {
		c, err := cases.Open(nil, n)
		if err != nil {
			t.Fatal(err)
		}
		s, err := design.Solve(t.Context(), c, design.Options{Refine: 0.5})
		if err != nil {
			t.Fatal(err)
		}
		r := answer.Summarize(s)
		r.Title += ` <script>alert("&")</script>`
		sp, err := study.FindSpread(t.Context(), s, design.Options{Workers: 2})
		if err != nil {
			t.Fatal(err)
		}
		in.Solutions, in.Reports, in.Spreads = append(in.Solutions, s), append(in.Reports, r), append(in.Spreads, sp)
	}
	if len(names) > 1 {
		in.Comparison = study.CompareRanged(names, in.Solutions, in.Reports, in.Spreads)
	}
	var b bytes.Buffer
	if err := Write(&b, in); err != nil {
		t.Fatal(err)
	}
	return in, b.Bytes()
}

// htmlTag is one start tag.
type htmlTag struct {
	name  string
	attrs map[string]string
}

func tagsOf(t *testing.T, page []byte) []htmlTag {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var out []htmlTag
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		if s, ok := tok.(xml.StartElement); ok {
			tag := htmlTag{strings.ToLower(s.Name.Local), map[string]string{}}
			for _, a := range s.Attr {
				tag.attrs[strings.ToLower(a.Name.Local)] = a.Value
			}
			out = append(out, tag)
		}
	}
}

// checkSelfContained refuses everything that a browser would fetch or run, and
// returns the number of whole pictures.
func checkSelfContained(t *testing.T, page []byte) int {
	t.Helper()
	pictures := 0
	for _, tag := range tagsOf(t, page) {
		switch tag.name {
		case "script", "iframe", "object", "embed", "base":
			t.Errorf("the page holds <%s>", tag.name)
		case "img":
			pictures++
			checkPicture(t, tag)
		}
		for _, a := range []string{"src", "href", "srcset", "data", "action", "poster"} {
			if v := tag.attrs[a]; v != "" && !strings.HasPrefix(v, "data:") && !strings.HasPrefix(v, "#") {
				t.Errorf("<%s %s=%q> leaves the file", tag.name, a, v)
			}
		}
	}
	for _, bad := range []string{"url(", "@import", "javascript:"} {
		if bytes.Contains(page, []byte(bad)) {
			t.Errorf("the page holds %q", bad)
		}
	}
	return pictures
}

func checkPicture(t *testing.T, tag htmlTag) {
	t.Helper()
	if len(tag.attrs["alt"]) < 20 {
		t.Errorf("picture with the words %q, want a description", tag.attrs["alt"])
	}
	code, ok := strings.CutPrefix(tag.attrs["src"], "data:image/svg+xml;charset=utf-8,")
	data, err := url.PathUnescape(code)
	if !ok || err != nil {
		t.Fatalf("picture %q is not inside the file: %v", tag.attrs["alt"], err)
	}
	var svg struct {
		XMLName xml.Name `xml:"svg"`
		Paths   []struct {
			D string `xml:"d,attr"`
		} `xml:"path"`
		Texts []struct {
			Letters []struct {
				Href string `xml:"href,attr"`
			} `xml:"use"`
		} `xml:"g"`
		Glyphs []struct {
			ID string `xml:"id,attr"`
		} `xml:"defs>path"`
	}
	if err := xml.Unmarshal([]byte(data), &svg); err != nil {
		t.Errorf("picture %q: %v", tag.attrs["alt"], err)
	}
	letters := 0
	for _, text := range svg.Texts {
		letters += len(text.Letters)
	}
	if len(svg.Paths) < 15 || letters < 60 {
		t.Errorf("picture %q: %d paths and %d letters, want a drawing with its words", tag.attrs["alt"], len(svg.Paths), letters)
	}
	defined := map[string]bool{}
	for _, g := range svg.Glyphs {
		defined["#"+g.ID] = true
	}
	for _, text := range svg.Texts {
		for _, l := range text.Letters {
			if !defined[l.Href] {
				t.Fatalf("picture %q: the letter %q is not in it", tag.attrs["alt"], l.Href)
			}
		}
	}
}

func TestReport(t *testing.T) {
	in, page := reportOf(t, "course-guitar-relief")
	if got, want := checkSelfContained(t, page), len(viz.Pictures(in.Solutions[0], in.Reports[0]))+1; got != want {
		t.Errorf("%d pictures, want %d: every page of the solve and the design", got, want)
	}
	for _, want := range []string{"<h2>The answers</h2>", "<h2>How sure each number is</h2>", "<h2>The design</h2>", "<h2>Strings and forces</h2>",
		"<h2>Where the load goes</h2>", "<h2>How far to trust this</h2>", "<h2>What is left out, and cautions</h2>", "<h2>Appendix: the case</h2>",
		"course-guitar.toml", "depth = 0.12", "bridge.relief.depth", "of the test", "&lt;script&gt;", "22 % (Wood Handbook"} {
		if !bytes.Contains(page, []byte(want)) {
			t.Errorf("the report does not hold %q", want)
		}
	}
	look(t, page)
}

// TestReportUnits reads the sentences that come first: every number in them
// has its unit.
func TestReportUnits(t *testing.T) {
	for _, name := range []string{"course-guitar-relief", "bench-plate"} {
		in, _ := reportOf(t, name)
		d := subject{name: name, s: in.Solutions[0], r: in.Reports[0], answers: study.Answers(in.Reports[0], in.Spreads[0])}
		unit := regexp.MustCompile(`^( to (−?[\d.]+|never))? (mm|N|MPa|%|degrees)`)
		lead := d.lead()
		if len(lead) < 4 {
			t.Errorf("%s: %d sentences, want at least 4", name, len(lead))
		}
		for _, s := range lead {
			for _, plain := range []string{"EN 1995-1-1", "factor 1.6"} {
				s = strings.ReplaceAll(s, plain, "")
			}
			for _, at := range regexp.MustCompile(`\d+(\.\d+)?`).FindAllStringIndex(s, -1) {
				if !unit.MatchString(s[at[1]:]) {
					t.Errorf("%s: %q: %s has no unit", name, s, s[at[0]:at[1]])
				}
			}
		}
	}
}

// TestReportAnswers reads the words of a relieved bridge: each number in them is
// that of the report.
func TestReportAnswers(t *testing.T) {
	in, page := reportOf(t, "course-guitar-relief")
	r := in.Reports[0]
	d := subject{name: in.Names[0], s: in.Solutions[0], r: r, spread: in.Spreads[0], answers: study.Answers(r, in.Spreads[0])}
	sink, _ := d.answer("bridge_sink")
	used, _ := d.answer("strength_used")
	closes := float64(r.Bridge.MiddleClosesAt)
	all := strings.Join(append(d.lead(), d.advice()...), "\n")
	for _, want := range []string{
		dec(float64(r.Decades.Sink[1]*sink.Most/sink.Value), 2) + " mm (a soft one that creeps much)",
		"one in six uses more than " + dec(float64(used.Most), 0) + " %",
		fmt.Sprintf("about %.0f semitones below pitch", 12*math.Log2(1/math.Sqrt(closes))),
		"0.120 mm of it as it bends down into the relief and " + dec(r.Bridge.Sink-0.12, 3) + " mm with the top under it",
		"solve again with hold = \"friction\"",
		"averaged over 8 mm of it",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("the answers lack %q:\n%s", want, all)
		}
	}
	for _, bad := range []string{"creep outward", "will creep", "Headline: the bridge sinks 0.45", "−0.000", "read on the bench", "hinged:"} {
		if bytes.Contains(page, []byte(bad)) {
			t.Errorf("the report holds %q", bad)
		}
	}
	if n := len(page); n > 2_000_000 {
		t.Errorf("a report of one design has %d bytes, want at most 2000000", n)
	}
}

func TestReportLean(t *testing.T) {
	for _, c := range []struct {
		tilt answer.TiltReport
		want string
	}{
		{answer.TiltReport{ForeAft: 0.013, Sideways: -0.0001}, "The bridge leans 0.013 degrees toward the neck, and does not lean sideways."},
		{answer.TiltReport{ForeAft: -0.02, Sideways: -0.111}, "The bridge leans 0.020 degrees toward the tail, and its bass side is lower by 0.111 degrees."},
		{answer.TiltReport{Sideways: 0.05}, "The bridge does not lean along the strings, and its treble side is lower by 0.050 degrees."},
	} {
		if got := leanWords(c.tilt); got != c.want {
			t.Errorf("%+v: %q, want %q", c.tilt, got, c.want)
		}
	}
}

func TestReportSideBySide(t *testing.T) {
	in, page := reportOf(t, "first", "bench-plate")
	want := len(viz.ComparePictures(in.Solutions, in.Comparison))
	for i, s := range in.Solutions {
		for _, p := range slices.Concat(viz.DesignPictures(s, in.Reports[i]), viz.Pictures(s, in.Reports[i])) {
			if !slices.Contains(elsewhere(2), p.Name) {
				want++
			}
		}
	}
	if got := checkSelfContained(t, page); got != want {
		t.Errorf("%d pictures, want %d", got, want)
	}
	for _, once := range []string{"<h2>What the numbers mean</h2>", "<h2>How the ranges were got</h2>", "<h2>What is left out, and cautions</h2>", "Collapse: whether the arch snaps through"} {
		if n := bytes.Count(page, []byte(once)); n != 1 {
			t.Errorf("the report of two designs holds %q %d times, want once", once, n)
		}
	}
	for _, text := range []string{"2 designs side by side", "<h2>In short</h2>", "B against A: ", "What differs, and what comes of it", "Appendix: the case of B", `id="design-2"`, "strength used", "±\u00a0wood", "<td>energy in bending, %</td>"} {
		if !bytes.Contains(page, []byte(text)) {
			t.Errorf("the report does not hold %q", text)
		}
	}
}

// look opens the report in a headless browser, if there is one: no picture
// missing, nothing fetched, nothing wider than the paper, and a PDF of it.
func look(t *testing.T, page []byte) {
	t.Helper()
	browser := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			browser = p
			break
		}
	}
	if browser == "" {
		t.Log("no browser in PATH: the report was parsed, but not looked at in one")
		return
	}
	const probe = `<script>addEventListener("load", () => {
		const i = [...document.images], wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
		const away = performance.getEntriesByType("resource").filter(e => !e.name.startsWith("data:"));
		document.title = "pictures " + i.length + " missing " + i.filter(e => !e.complete || e.naturalWidth < 100).length +
			" fetched " + away.length + " too wide " + Math.max(0, wide);
	})</script>`
	dir := t.TempDir()
	file := filepath.Join(dir, "report.html")
	if err := os.WriteFile(file, append(bytes.Clone(page), probe...), 0o644); err != nil {
		t.Fatal(err)
	}
	start := func(args ...string) []byte {
		args = append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--window-size=760,1000", "--user-data-dir=" + filepath.Join(dir, "profile")}, args...)
		out, err := exec.CommandContext(t.Context(), browser, append(args, "file://"+file)...).Output()
		if err != nil {
			t.Fatalf("%s: %v", browser, err)
		}
		return out
	}
	want := fmt.Sprintf("<title>pictures %d missing 0 fetched 0 too wide 0</title>", bytes.Count(page, []byte("<img ")))
	if got := regexp.MustCompile(`<title>.*?</title>`).Find(start("--dump-dom")); string(got) != want {
		t.Errorf("in the browser: %s, want %s", got, want)
	}
	pdf := filepath.Join(dir, "report.pdf")
	start("--no-pdf-header-footer", "--print-to-pdf="+pdf)
	data, err := os.ReadFile(pdf)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(data, -1)); !bytes.HasPrefix(data, []byte("%PDF-")) || n < 10 {
		t.Errorf("printed: %d pages in %d bytes, want a PDF of at least 10", n, len(data))
	}
}

// TestReportMeasured reads gauges on the bench: the report has the factor they ask for,
// and does not send anyone to measure what was measured.
func TestReportMeasured(t *testing.T) {
	in, page := reportOf(t, "course-guitar")
	d := subject{s: in.Solutions[0], r: in.Reports[0]}
	const send = "To see whether your plank is stiffer"
	if !bytes.Contains(page, []byte(send)) {
		t.Fatalf("a report without readings does not say %q", send)
	}
	for i := range d.r.Gauges {
		d.r.Gauges[i].Measured = answer.Num(d.r.Gauges[i].Sink / 1.19)
	}
	d.r.Bench = answer.Bench(d.r.Gauges)
	if all := strings.Join(d.advice(), "\n"); strings.Contains(all, send) || !strings.Contains(all, "Your readings stand beside") {
		t.Errorf("advice with readings: %s", all)
	}
	if words := strings.Join(d.sinks().Words, "\n"); !strings.Contains(words, "every stiffness were 1.19 times the computed") {
		t.Errorf("no factor of stiffness in %q", words)
	}
}

// TestReportTwoFeet tells two feet by feet and heels: they have no middle.
func TestReportTwoFeet(t *testing.T) {
	in, page := reportOf(t, "course-guitar-two-feet")
	if !bytes.Contains(page, []byte("the bass foot carries")) || bytes.Contains(page, []byte("middle of the foot")) {
		t.Errorf("the lead of two feet: %q", (&subject{s: in.Solutions[0], r: in.Reports[0]}).sayMiddle(in.Reports[0].Bridge))
	}
}

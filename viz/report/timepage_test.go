package report

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"archload/cases/aging"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/season"
)

// TestTimePages writes the pages of the seasons and of the years of a design: every season and age, its pictures and
// all cautions.
func TestTimePages(t *testing.T) {
	c := *casetest.Open(t, "first")
	c.Season = season.Usual()
	o := design.Options{Workers: 2, NoError: true, Refine: 0.25}
	seasons, err := aging.Seasons(context.Background(), &c, aging.Wish{}, o)
	if err != nil {
		t.Fatal(err)
	}
	years, err := aging.Years(context.Background(), &c, aging.Wish{Ages: []aging.Age{{Name: "9y", Years: 9}}}, o)
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	if err := WriteSeasons(&page, seasons, "0"); err != nil {
		t.Fatal(err)
	}
	wantPage(t, page.String(), 2, append([]string{"Winter: the arch falls", "<td>summer</td>", "strings come lower"}, seasons.Cautions[0][:40])...)
	page.Reset()
	if err := WriteYears(&page, years, "0"); err != nil {
		t.Fatal(err)
	}
	wantPage(t, page.String(), 1, "<td>9y</td>", "Strings lowest: winter at 9y", "an indication: wood of one species", "0.5 to 1.3 times")
}

func wantPage(t *testing.T, page string, pictures int, want ...string) {
	t.Helper()
	if n := strings.Count(page, "<img "); n != pictures {
		t.Errorf("%d pictures, want %d", n, pictures)
	}
	for _, w := range want {
		if !strings.Contains(page, w) {
			t.Errorf("the page does not say %q", w)
		}
	}
}

package cases

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf16"
)

// TestBounds wants a file beyond the bounds refused before it is parsed, at
// the line where it goes beyond them.
func TestBounds(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"parts", "format = 1\na" + strings.Repeat(".b", 100000) + " = 1", "a.toml:2: want a key of at most 32 parts"},
		{"header", "[x" + strings.Repeat(" . \"b.c\"", 40) + "]", "a.toml:1: want a key of at most 32 parts"},
		{"lists", "a = " + strings.Repeat("[", 20000), "a.toml:1: want lists and tables at most 32 deep"},
		{"tables", "# [[[\n'''\n[[['''\na = " + strings.Repeat("{a=", 40), "a.toml:4: want lists and tables at most 32 deep"},
		{"keys", strings.Repeat("a = 1\n", 20001), "a.toml:20001: want at most 20000 keys"},
		{"values", "a = [" + strings.Repeat("1,", 300001), "a.toml:1: want at most 300000 values"},
	} {
		_, err := Load(fstest.MapFS{"a.toml": {Data: []byte(c.text)}}, "a.toml")
		if err == nil || err.Error() != c.want {
			t.Errorf("%s: %.200v, want %s", c.name, err, c.want)
		}
	}
}

// TestFaultsAreCut wants the first hundred faults of many, then a word that
// there are more.
func TestFaultsAreCut(t *testing.T) {
	var b strings.Builder
	for i := range 5000 {
		fmt.Fprintf(&b, "key%d = 1\n", i)
	}
	_, err := Load(fstest.MapFS{"a.toml": {Data: []byte(b.String())}}, "a.toml")
	lines := strings.Split(err.Error(), "\n")
	if len(lines) != 101 || !strings.Contains(err.Error(), "too many faults; want these 100 mended first") {
		t.Errorf("%d lines: %.300s", len(lines), err)
	}
}

// TestTablesFromElsewhere reads one outline as spreadsheets of the world write it.
func TestTablesFromElsewhere(t *testing.T) {
	plain := "x_mm,y_mm\n0,100.5\n80,-60\n-80,-60\n"
	utf16Text := func(s string, low, high int) []byte {
		var b bytes.Buffer
		for _, u := range append([]uint16{0xfeff}, utf16.Encode([]rune(s))...) {
			pair := [2]byte{byte(u), byte(u >> 8)}
			b.Write([]byte{pair[low], pair[high]})
		}
		return b.Bytes()
	}
	for name, data := range map[string][]byte{
		"plain":               []byte(plain),
		"semicolons, commas":  []byte("x_mm;y_mm\r\n0;100,5\r\n80;-60,0\r\n-80;-60\r\n"),
		"tabs":                []byte("x_mm\ty_mm\n0\t100,5\n80\t-60\n-80\t-60\n"),
		"old line ends":       []byte("x_mm,y_mm\r0,100.5\r80,-60\r-80,-60\r"),
		"UTF-16 little":       utf16Text(plain, 0, 1),
		"UTF-16 big":          utf16Text(plain, 1, 0),
		"UTF-8 with its mark": append([]byte{0xef, 0xbb, 0xbf}, plain...),
	} {
		fsys := fstest.MapFS{"a.toml": {Data: []byte(strings.Replace(topText, `outline = `, `outline = "o.csv" # `, 1) + restText)}, "o.csv": {Data: data}}
		c, err := Load(fsys, "a.toml")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if p := c.Plate.Outline.Points; len(p) != 3 || p[0] != [2]float64{0, 100.5} || p[1] != [2]float64{80, -60} {
			t.Errorf("%s: %v", name, p)
		}
	}
}

// TestForeignFiles wants no contents of a file that is no table in a message,
// and no control characters.
func TestForeignFiles(t *testing.T) {
	for data, want := range map[string]string{
		"root:*:20228:0:99999:7:::\n":  `"o.csv" is no such table; want one that begins with a header x_mm,y_mm[,corner]`,
		"x_mm,y_mm\x1b[31mEVIL\n0,1\n": `o.csv:1: y_mm\x1b[31mEVIL: want a unit of`,
	} {
		fsys := fstest.MapFS{"a.toml": {Data: []byte(strings.Replace(topText, `outline = `, `outline = "o.csv" # `, 1) + restText)}, "o.csv": {Data: []byte(data)}}
		_, err := Load(fsys, "a.toml")
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "root:") || strings.Contains(err.Error(), "\x1b") {
			t.Errorf("%v, want %s", err, want)
		}
	}
	_, err := Load(fstest.MapFS{"a.toml": {Data: []byte("title = \"a\\u001b]0;\\nb\"\n")}}, "a.toml")
	if want := `title: want one line of text without control characters, found "a\x1b]0;\nb"`; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("%v, want %s", err, want)
	}
}

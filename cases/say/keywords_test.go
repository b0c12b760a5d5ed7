package say

import (
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"archload/cases/keylist"
)

// The page is written anew by go test ./cases/say -run KeyPage -keys.update.
var keysUpdate = flag.Bool("keys.update", false, "write docs/keys.md anew")

const keyPage = "../../docs/keys.md"

// TestKeyPage holds the page equal to what the program says of its keys.
func TestKeyPage(t *testing.T) {
	tables, err := keylist.All()
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	if err := WriteKeyPage(&got, tables); err != nil {
		t.Fatal(err)
	}
	if *keysUpdate {
		if err := os.WriteFile(keyPage, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(keyPage)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got.Bytes(), want) {
		t.Errorf("%s is not what the program says; write it anew with -keys.update", keyPage)
	}
}

// TestKeyText wants each key in the list, in lines that a terminal holds.
func TestKeyText(t *testing.T) {
	tables, err := keylist.All()
	if err != nil {
		t.Fatal(err)
	}
	var list, entries bytes.Buffer
	if err := WriteKeys(&list, tables); err != nil {
		t.Fatal(err)
	}
	if err := WriteKeyEntries(&entries, tables); err != nil {
		t.Fatal(err)
	}
	for _, table := range tables {
		for _, k := range table.Keys {
			if !strings.Contains(entries.String(), "\n"+k.Path+"\n") && !strings.HasPrefix(entries.String(), k.Path+"\n") {
				t.Errorf("%s is not explained", k.Path)
			}
			if !strings.Contains(list.String(), "\n  "+k.Name+" ") {
				t.Errorf("%s is not listed", k.Path)
			}
		}
	}
	for line := range strings.Lines(list.String()) {
		if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > textWidth {
			t.Errorf("%d columns: %q", n, line)
		}
	}
}

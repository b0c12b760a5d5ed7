package spreadsheet

import (
	"bytes"
	"testing"
)

func TestWrite(t *testing.T) {
	var b bytes.Buffer
	err := Write(&b, []string{"name", "x_mm"}, []string{"=cmd|'/c calc'!A0", "-1.5e-9"}, []string{"@SUM(1)", "+3"},
		[]string{"-2+3", "-apex"}, []string{"\tx", ""}, []string{"a=b", "5 - 3"})
	want := "name,x_mm\n'=cmd|'/c calc'!A0,-1.5e-9\n'@SUM(1),+3\n'-2+3,'-apex\n'\tx,\na=b,5 - 3\n"
	if err != nil || b.String() != want {
		t.Errorf("got %q, %v, want %q", b.String(), err, want)
	}
}

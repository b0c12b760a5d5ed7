package say

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

func section(b *strings.Builder, name string) { fmt.Fprintf(b, "%s\n", name) }

func line(b *strings.Builder, label, format string, args ...any) {
	fmt.Fprintf(b, "  %-28s %s\n", label, plainZeros(fmt.Sprintf(format, args...)))
}

// plainZeros takes the sign off numbers that are rounded to zero.
func plainZeros(text string) string {
	return regexp.MustCompile(`-0(\.0+)?([^.0-9]|$)`).ReplaceAllString(text, "0$1$2")
}

// padded cuts or fills a text to a width, counted in characters.
func padded(s string, width int) string {
	n := utf8.RuneCountInString(s)
	if n > width {
		return string([]rune(s)[:width-1]) + "…"
	}
	return s + strings.Repeat(" ", width-n)
}

package main

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestName is the longest name, in bytes, of a file NAME.toml that the usual
// file systems take.
const longestName = 255 - len(".toml")

// badName says why some file system does not take a name for a folder; "" if
// all do. A design is passed on: what is a name on one system must be one on
// the others.
func badName(name string) string {
	odd := func(r rune) bool { return unicode.IsControl(r) || strings.ContainsRune(`/\<>:"|?*`, r) }
	stem, _, _ := strings.Cut(name, ".")
	switch i := strings.IndexFunc(name, odd); {
	case strings.Trim(name, ".") == "":
		return "it names no folder"
	case !utf8.ValidString(name):
		return "it is not UTF-8 text"
	case i >= 0:
		r, _ := utf8.DecodeRuneInString(name[i:])
		return fmt.Sprintf("no name holds %q everywhere", r)
	case strings.HasSuffix(name, ".") || strings.TrimSpace(name) != name:
		return "a name begins and ends with no space and ends with no point"
	case len(name) > longestName:
		return fmt.Sprintf("it is longer than %d bytes", longestName)
	case slices.Contains(devices(), strings.ToLower(strings.TrimSpace(stem))):
		return fmt.Sprintf("%s is a device on some systems", stem)
	}
	return ""
}

// devices are the names that Windows keeps for devices, in any folder and with
// any ending.
func devices() []string {
	out := []string{"con", "prn", "aux", "nul"}
	for n := 1; n <= 9; n++ {
		out = append(out, fmt.Sprintf("com%d", n), fmt.Sprintf("lpt%d", n))
	}
	return out
}

// Package spreadsheet writes CSV tables that are safe to open in a
// spreadsheet.
package spreadsheet

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
)

// Write writes rows as comma-separated values. A spreadsheet takes a text that
// begins like a formula for one and computes it, and what it computes may read
// files or call programs: such a cell gets the apostrophe before it by which
// spreadsheets know a text.
func Write(w io.Writer, rows ...[]string) error {
	c := csv.NewWriter(w)
	for _, row := range rows {
		safe := make([]string, len(row))
		for i, cell := range row {
			safe[i] = quoted(cell)
		}
		if err := c.Write(safe); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// quoted is a cell with the apostrophe that it needs. A number needs none.
func quoted(cell string) string {
	if !strings.ContainsAny(cell[:min(1, len(cell))], "=+-@\t\r") {
		return cell
	}
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	return "'" + cell
}

package tree

// Column is one column that a table may have.
type Column struct {
	Name     string
	Also     string    // another name that a file may have it under, the one messages ask for; "": none
	Dim      Dimension // of its numbers
	Label    bool      // its cells are names, not numbers
	Optional bool
}

// names are the names a file may have the column under, the usual one first.
func (c Column) names() []string {
	if c.Also == "" {
		return []string{c.Name}
	}
	return []string{c.Also, c.Name}
}

// CsvTable is a table as read: numbers in base units, by column and row.
type CsvTable struct {
	Src    *Source
	Labels map[string][]string
	Values map[string][]float64
	Lines  []int // line of each row in the file
}

package tree

// Column is one column that a table may have.
type Column struct {
	Name     string
	Dim      Dimension // of its numbers
	Label    bool      // its cells are names, not numbers
	Optional bool
}

// CsvTable is a table as read: numbers in base units, by column and row.
type CsvTable struct {
	Src    *Source
	Labels map[string][]string
	Values map[string][]float64
	Lines  []int // line of each row in the file
}

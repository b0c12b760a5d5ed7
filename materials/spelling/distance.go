// Package spelling measures how far a word that was written is from one that
// was meant, for messages that name what is near.
package spelling

// Distance returns the least number of letters inserted, removed or replaced
// that turns a into b (V. I. Levenshtein, Soviet Physics Doklady 10, 1966). It
// counts bytes, and capitals as other letters.
func Distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			replaced := diagonal
			if a[i] != b[j] {
				replaced++
			}
			diagonal = row[j+1]
			row[j+1] = min(replaced, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

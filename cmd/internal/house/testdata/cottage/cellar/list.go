package cellar

// list uses both others, which makes four uses of which one runs back.
func list(s Shelf) []int {
	var years []int
	for _, w := range s {
		years = append(years, w.Year)
	}
	return years
}

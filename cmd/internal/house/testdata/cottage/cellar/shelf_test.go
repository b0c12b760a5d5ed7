package cellar

var _ = list(nil)

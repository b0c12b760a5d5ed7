package panel

// Sizes of what the inner loops work on.
const (
	Rows     = 8            // of a packed panel: a column of a panel is so many numbers in a row, two AVX2 registers or one cache line
	Block    = 6            // degrees of freedom of a node
	TileLen  = Rows * Block // values of one tile: a panel's six columns of a node
	BlockLen = Block * Block
)

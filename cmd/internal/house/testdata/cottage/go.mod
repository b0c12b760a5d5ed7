module cottage

go 1.26.0

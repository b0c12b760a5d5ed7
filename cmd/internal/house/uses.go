package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
)

// uses holds which file of a package uses which.
type uses struct {
	files []string            // names, sorted; the numbers below count in this list
	of    map[[2]int][]string // the names declared in file [1] that file [0] mentions, sorted
}

// usesOf finds the uses between the files of a package.
func usesOf(fset *token.FileSet, files []*ast.File, pkg *types.Package, info *types.Info) uses {
	u := uses{of: map[[2]int][]string{}}
	for _, f := range files {
		u.files = append(u.files, fset.Position(f.Package).Filename)
	}
	slices.Sort(u.files)
	number := map[string]int{}
	for i, name := range u.files {
		number[name] = i
	}
	for id, obj := range info.Uses {
		name, shared := sharedName(obj, pkg)
		if !shared {
			continue
		}
		from, to := fset.Position(id.Pos()).Filename, fset.Position(obj.Pos()).Filename
		if from != to {
			pair := [2]int{number[from], number[to]}
			u.of[pair] = append(u.of[pair], name)
		}
	}
	for pair, names := range u.of {
		slices.Sort(names)
		u.of[pair] = slices.Compact(names)
	}
	return u
}

// sharedName tells whether other files of the package can mention obj, and how it is
// called: a package-level object, a method "(T).m" or a field ".f".
func sharedName(obj types.Object, pkg *types.Package) (string, bool) {
	if obj.Pkg() != pkg {
		return "", false
	}
	switch o := obj.(type) {
	case *types.Var:
		if o.IsField() {
			return "." + o.Name(), true
		}
	case *types.Func:
		if recv := o.Origin().Signature().Recv(); recv != nil {
			return types.TypeString(recv.Type(), func(*types.Package) string { return "" }) + "." + o.Name(), true
		}
	}
	return obj.Name(), obj.Parent() == pkg.Scope()
}

// users returns for each file the files that use it.
func (u uses) users() [][]int {
	by := make([][]int, len(u.files))
	for pair := range u.of {
		by[pair[1]] = append(by[pair[1]], pair[0])
	}
	for _, list := range by {
		slices.Sort(list)
	}
	return by
}

// back returns the pairs of which the first stands below the second in the order,
// as the first files of the order come.
func (u uses) back(order []int) [][2]int {
	height := make([]int, len(order))
	for h, file := range order {
		height[file] = h
	}
	var pairs [][2]int
	for pair := range u.of {
		if height[pair[0]] < height[pair[1]] {
			pairs = append(pairs, pair)
		}
	}
	slices.SortFunc(pairs, func(a, b [2]int) int {
		if a[0] != b[0] {
			return height[a[0]] - height[b[0]]
		}
		return height[a[1]] - height[b[1]]
	})
	return pairs
}

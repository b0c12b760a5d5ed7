// Package movement builds and solves the models of the published checks whose movements are not
// small: buckling, limit loads, and plates and strips bent far. Each is a problem.Problem, in the
// units of its source.
//
// sheet.go meshes a stretch of surface; buckling.go has plates and shells at their linear factor,
// path.go those that are followed along their load,
// carved.go whole case files that are followed so.
package movement

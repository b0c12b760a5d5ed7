// Package swelling builds and solves the checks of what water and time do to
// wood, beside package problem.
package swelling

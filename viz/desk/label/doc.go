// Package label finds places for words about a drawing: outside what they speak of, beside
// each other, near before far, with a thin line back where they stand off.
package label

// Package patchwork is the geometry of pieced blocks: it cuts, sews, recuts,
// turns and trims units as a maker does, keeps every seam with the way it is
// pressed, and finds where seams meet. Begin with Make, which makes a Recipe.
//
// The engine knows no block by name: every block, built in or the maker's own,
// is a recipe, a list of these steps. All lengths are exact, in ticks of
// measure.Length; the package does no arithmetic in floating point.
package patchwork

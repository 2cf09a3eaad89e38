// Package patchwork is the geometry of pieced blocks: it cuts, sews, recuts,
// turns and trims units as a maker does, keeps every seam with the way it is
// pressed, and finds where seams meet. Begin with Make, which makes a Recipe.
//
// Squares and strips are cut from cloth; half-square and quarter-square triangles
// are made from two squares, strip sets cut into segments. Where a run makes more
// units than a block takes, the step is pooled: Build.Batches counts the runs of
// a lot.
//
// The engine knows no block by name: every block, built in or the maker's own,
// is a recipe, a list of these steps. All lengths are exact, in ticks of
// measure.Length; the package does no arithmetic in floating point.
package patchwork

// Package patchwork is the geometry of pieced blocks: it cuts, sews, recuts,
// turns and trims units as a maker does, keeps every seam with the way it is
// pressed, and finds where seams meet. It knows no block by name: a block is a
// recipe, a list of these steps.
package patchwork

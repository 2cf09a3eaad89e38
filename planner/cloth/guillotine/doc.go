// Package guillotine lays rectangles out so that straight cuts from edge to
// edge part them: the cuts that a ruler makes.
//
// Measures are whole numbers of any one unit. A strip has a width and takes the
// length it needs; sheets have both. A Simple layout has levels across the
// width, pieces side by side in each, and each piece trimmed once; a Nested one
// is cut in any order. Both carry a bound that no layout beats, so that the gap
// says how much better a plan could be at most.
//
// Every search is deterministic: it is bounded by counted steps and never by a
// clock, draws from a fixed sequence, and rounds every floating-point product
// before adding it, so that no processor fuses the two.
package guillotine

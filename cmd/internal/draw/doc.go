// Package draw makes drawings of a plan: a block at every step of its making and
// the whole top, as SVG, and a block in characters for a terminal.
//
// A drawing takes a writer and a value, asks for nothing more, and is the same,
// byte for byte, whenever it is made. Geometry stays in whole ticks until it is
// scaled to the page, so no rounding of floats can differ between machines.
//
// The look is the project's own: cloth in its own colour under a mark for its
// role, which keeps roles apart in black and white too; seams as thin lines; an
// arrow over a seam that points the way its allowance is pressed; dashes where a
// cut goes.
package draw

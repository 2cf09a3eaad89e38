package draw

import "strconv"

// turnMark shows how far a piece was turned: an arc clockwise from the top as
// long as the turn, on a light ground.
func (c *canvas) turnMark(place spot, degrees int) {
	ends := map[int]string{
		90:  "M0-6A6 6 0 0 1 6 0M3-2L6 1.5L9-2",
		180: "M0-6A6 6 0 0 1 0 6M3.6 3L-.6 6L3.6 9",
		270: "M0-6A6 6 0 1 1-6 0M-9 2.5L-6-1.5L-3 2.5",
	}
	c.open("g", shifted(place.x, place.y))
	c.void("circle", is("r", "11"), is("fill", paper), is("opacity", ".92"))
	c.void("path", is("d", ends[degrees]), is("fill", "none"), is("stroke", ink), is("stroke-width", "1.8"),
		is("stroke-linecap", "round"), is("stroke-linejoin", "round"))
	c.void("circle", is("cy", "-6"), is("r", "1.9"), is("fill", ink))
	c.shut("g")
}

// fromMark says in a corner of a piece which place it came from.
func (c *canvas) fromMark(place int, size spot) {
	text := strconv.Itoa(place)
	width := textWidth(text, measureSize) + 6*unit
	c.void("rect", at("x", 2*unit), at("y", 2*unit), at("width", width), at("height", measureSize+3*unit),
		at("rx", 3*unit), is("fill", paper), is("opacity", ".92"))
	c.measureAt(text, 2*unit+width/2, measureSize+2*unit, "middle")
}

// freeSpot is a place on a piece that is far from the signs on its seams: the
// middle, or a quarter of the way along one of its sides.
func freeSpot(size spot, taken []spot) spot {
	best, most := spot{size.x / 2, size.y / 2}, span(-1)
	for _, place := range []spot{
		{size.x / 2, size.y / 2},
		{size.x / 2, size.y / 4}, {size.x / 4, size.y / 2},
		{size.x / 2, size.y * 3 / 4}, {size.x * 3 / 4, size.y / 2},
	} {
		room := min(place.x, place.y, size.x-place.x, size.y-place.y)
		for _, t := range taken {
			room = min(room, t.far(place))
		}
		if room > most {
			best, most = place, room
		}
	}
	return best
}

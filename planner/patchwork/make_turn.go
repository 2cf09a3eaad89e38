package patchwork

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
)

// turn turns the pieces of a step in their places, then exchanges places.
func (m *maker) turn(step Step) (Made, *Fault) {
	pieces, fault := m.piecesOf(step.Of)
	if fault != nil {
		fault.Key = "turn"
		return Made{}, fault
	}
	turns := step.Turns
	if turns == nil && len(step.Exchange) > 0 {
		turns = unturned(pieces)
	}
	if fault := checkTurns(turns, pieces); fault != nil {
		fault.Key = "by"
		return Made{}, fault
	}
	// Turns go with the piece and are told by where it lay; then places change.
	from, fault := exchanged(step.Exchange, pieces)
	if fault != nil {
		fault.Key = "exchange"
		return Made{}, fault
	}
	turned := make([][]Unit, len(pieces))
	for r, row := range pieces {
		turned[r] = make([]Unit, len(row))
		for c, place := range row {
			piece := from[r][c]
			unit := pieces[piece.row][piece.column].Turned(turns[piece.row][piece.column] / 90)
			if fault := m.checkFit(piece, spot{r, c}, unit.Size, place.Size); fault != nil {
				return Made{}, fault
			}
			turned[r][c] = unit
		}
	}
	return Made{Unit: laid(turned), Pieces: turned}, nil
}

// spot is a place in a grid of pieces, from 0.
type spot struct{ row, column int }

func (s spot) String() string { return fmt.Sprintf("piece %d in row %d", s.column+1, s.row+1) }

// checkFit refuses a piece that is not as large as the place it comes to. Half
// turns in place always fit; a quarter turn does where the piece is square, or
// where it goes to a place that lies the other way.
func (m *maker) checkFit(piece, place spot, have, room measure.Size) *Fault {
	high := m.uneven(room.Height, have.Height)
	if high == "" && m.uneven(room.Width, have.Width) == "" {
		return nil
	}
	if piece == place {
		return &Fault{
			Key: "by", Row: piece.row + 1, Column: piece.column + 1,
			What: fmt.Sprintf("a quarter turn of %s does not fit its place: %s against %s", piece,
				max(have.Width, have.Height).Show(m.show), min(have.Width, have.Height).Show(m.show)),
			Hint: "give it no turn or half a turn (0 or 180), or cut square pieces",
		}
	}
	return &Fault{
		Key: "exchange",
		What: fmt.Sprintf("%s, %s as it is turned, does not fit the place of %s, which is %s", piece,
			have.Show(m.show), place, room.Show(m.show)),
		Hint: "exchange pieces of one size, or give them a quarter turn where that makes them fit",
	}
}

// unturned is a turn of nothing for each piece.
func unturned(pieces [][]Unit) [][]int {
	turns := make([][]int, len(pieces))
	for r, row := range pieces {
		turns[r] = make([]int, len(row))
	}
	return turns
}

// exchanged is which piece comes to lie in each place, after one exchange after
// the other.
func exchanged(pairs [][2]int, pieces [][]Unit) ([][]spot, *Fault) {
	columns := len(pieces[0])
	order := make([]spot, len(pieces)*columns)
	for i := range order {
		order[i] = spot{i / columns, i % columns}
	}
	for i, pair := range pairs {
		for _, n := range pair {
			if n < 1 || n > len(order) {
				return nil, &Fault{
					Row:  i + 1,
					What: fmt.Sprintf("there is no piece %d to exchange among %s", n, gridText(pieces)),
					Hint: fmt.Sprintf("pieces are numbered row by row, from 1 at the top left to %d", len(order)),
				}
			}
		}
		if pair[0] == pair[1] {
			return nil, &Fault{
				Row:  i + 1,
				What: fmt.Sprintf("piece %d is exchanged with itself", pair[0]),
				Hint: "name two pieces, or leave the exchange out",
			}
		}
		order[pair[0]-1], order[pair[1]-1] = order[pair[1]-1], order[pair[0]-1]
	}
	return slices.Collect(slices.Chunk(order, columns)), nil
}

// checkTurns refuses a map of turns that is not one for the pieces.
func checkTurns(turns [][]int, pieces [][]Unit) *Fault {
	fits := len(turns) == len(pieces)
	for r := 0; fits && r < len(turns); r++ {
		fits = len(turns[r]) == len(pieces[r])
	}
	if !fits {
		return &Fault{
			What: "the turns do not fit the " + gridText(pieces),
			Hint: "give one turn for each piece, row by row",
		}
	}
	for r, row := range turns {
		for c, degrees := range row {
			if degrees%90 != 0 {
				return &Fault{
					Row: r + 1, Column: c + 1,
					What: fmt.Sprintf("%s cannot be turned by %d degrees", spot{r, c}, degrees),
					Hint: "turns are 0, 90, 180 or 270 degrees clockwise",
				}
			}
		}
	}
	return nil
}

// laid is pieces laid edge to edge, not sewn.
func laid(pieces [][]Unit) Unit {
	var sheet Unit
	var at Point
	for _, row := range pieces {
		at.X = 0
		for _, piece := range row {
			sheet.add(piece, piece.whole(), at)
			at.X += piece.Size.Width
		}
		at.Y += row[0].Size.Height
		sheet.Size.Width = max(sheet.Size.Width, at.X)
	}
	sheet.Size.Height = at.Y
	return sheet
}

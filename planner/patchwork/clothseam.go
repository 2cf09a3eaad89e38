package patchwork

// ClothSeam is a seam between two single cloths: the role of the first (left or
// upper) one, toward which it is pressed the first way, and of the second.
type ClothSeam struct {
	First, Second string
}

// ClothSeams lists the seams of a choice where all of them join two single
// cloths; it is empty where any of them joins something sewn.
func (b *Build) ClothSeams(c Choice) []ClothSeam {
	var made Made
	for _, m := range b.Steps {
		if m.Step.Name == c.Step {
			made = m
		}
	}
	switch made.Step.Do {
	case HalfSquare, QuarterSquare:
		if c.Between {
			return nil
		}
		return []ClothSeam{{made.Step.Roles[0], made.Step.Roles[1]}}
	case Sew:
		return seamsBetween(b.sewnAt(made.Step, c))
	}
	return nil
}

// sewnAt is the units that the seams of a choice join, in order; nil where rows
// of several units are joined.
func (b *Build) sewnAt(step Step, c Choice) []Unit {
	grid := b.gridOf(step)
	if !c.Between {
		return grid[c.Row]
	}
	if len(grid[c.Row]) > 1 || len(grid[c.Row+1]) > 1 {
		return nil
	}
	return []Unit{grid[c.Row][0], grid[c.Row+1][0]}
}

// gridOf is the units that a step sews.
func (b *Build) gridOf(step Step) [][]Unit {
	units := map[string]Made{}
	for _, m := range b.Steps {
		units[m.Step.Name] = m
	}
	if step.Whole {
		return units[step.Of].Pieces
	}
	grid := make([][]Unit, len(step.Rows))
	for r, row := range step.Rows {
		for _, cell := range row {
			grid[r] = append(grid[r], units[cell.Of].Unit)
		}
	}
	return grid
}

func seamsBetween(units []Unit) []ClothSeam {
	var seams []ClothSeam
	for i, u := range units {
		if len(u.Seams) > 0 || len(u.Patches) == 0 {
			return nil
		}
		if i > 0 {
			seams = append(seams, ClothSeam{units[i-1].Patches[0].Role, u.Patches[0].Role})
		}
	}
	return seams
}

package planner

import (
	"slices"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// sampleStrips is how many strips a sample rail has: of 2 1/2 in, three make a
// square with the sample length.
const sampleStrips = 3

// Sample is a built-in with measures that a quilter might choose, to be shown and
// changed.
type Sample struct {
	Recipe   patchwork.Recipe
	Roles    []string // that its steps name, in their order
	Measures []string // as the job file gives them: "square: 5 in"
}

// Sample is the built-in with its sample measures; those that may be left out are.
func (b BuiltIn) Sample() Sample {
	spec := BlockSpec{Make: b.Name, Measures: map[string]measure.Length{}, Strips: sampleStrips}
	var sample Sample
	for _, m := range b.Measures {
		if m.Optional {
			continue
		}
		example := keyExamples()[m.Name]
		_, text, _ := strings.Cut(example, ": ")
		// The examples are those that the reader's own hints show.
		size, err := measure.ParseSize(text, measure.Inches)
		if err != nil {
			continue
		}
		sample.Measures = append(sample.Measures, example+" in")
		if m.Sides {
			spec.Square = size
		} else {
			spec.Measures[m.Name] = size.Width
		}
	}
	sample.Recipe = recipeFor(spec)
	for _, s := range sample.Recipe.Steps {
		for _, role := range []string{s.Role, s.Roles[0], s.Roles[1]} {
			if role != "" && !slices.Contains(sample.Roles, role) {
				sample.Roles = append(sample.Roles, role)
			}
		}
	}
	return sample
}

package planner

import "quiltrun/planner/patchwork"

// printRole is the role that PressPrint presses toward.
const printRole = "print"

// ruled is the choices that a rule decides for a colourway: those whose seams
// all join two single cloths, where the rule wants no two of them pressed
// opposite ways. A row of three cloths, the middle one the darkest, is free.
func (m *maker) ruled(colourway int, rule PressRule) []patchwork.Given {
	if rule == PressBest {
		return nil
	}
	var given []patchwork.Given
	b := m.plan.Colourways[colourway].Build
	for i, choice := range b.Choices {
		first, second := 0, 0
		for _, s := range b.ClothSeams(choice) {
			switch wish := m.wish(colourway, rule, s); {
			case wish < 0:
				first++
			case wish > 0:
				second++
			}
		}
		if (first > 0) != (second > 0) {
			given = append(given, patchwork.Given{Choice: i, Second: second > 0})
		}
	}
	return given
}

// wish is which cloth of a seam a rule wants it pressed toward: below nought the
// first, above nought the second, nought if it does not matter.
func (m *maker) wish(colourway int, rule PressRule, s patchwork.ClothSeam) int {
	if rule == PressPrint {
		return boolean(s.Second == printRole) - boolean(s.First == printRole)
	}
	first, second := m.darkerVotes(colourway, s)
	return second - first
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// darkerVotes is in how many blocks of one quilt the first role of a seam is the
// darker one, and in how many the second.
func (m *maker) darkerVotes(colourway int, s patchwork.ClothSeam) (first, second int) {
	for _, b := range m.own[colourway][:m.plan.Colourways[colourway].Blocks] {
		one, other := m.lightness(b, s.First), m.lightness(b, s.Second)
		first += boolean(one < other)
		second += boolean(other < one)
	}
	return first, second
}

// lightness is the luminance of the fabric that a block has in a role.
func (m *maker) lightness(b *Block, role string) float64 {
	for _, r := range b.Fabrics {
		if r.Role == role {
			return luminance(m.fabric(r.Fabric).Colour)
		}
	}
	return 0
}

// warnRule says where a rule decides nothing, and where a colourway cannot keep
// it in all its blocks, since every unit of a step is pressed alike.
func (m *maker) warnRule(rule PressRule) {
	decides := false
	for i := range m.plan.Colourways {
		decides = decides || len(m.ruled(i, rule)) > 0
		if rule == PressDarker {
			m.warnDarker(i)
		}
	}
	if !decides {
		m.warn(warnRuleIdle, "press", "press: %s decides nothing here: no seam that joins two single cloths can follow it; everything is pressed as it nests best", rule)
	}
}

func (m *maker) warnDarker(colourway int) {
	c := &m.plan.Colourways[colourway]
	for _, g := range m.ruled(colourway, PressDarker) {
		for _, s := range c.Build.ClothSeams(c.Build.Choices[g.Choice]) {
			first, second := m.darkerVotes(colourway, s)
			toward, lighter := s.First, second
			if g.Second {
				toward, lighter = s.Second, first
			}
			if lighter > 0 {
				m.warn(warnRuleMixed, "colourways."+c.Name, "%s: %s is the lighter cloth in %d of %d blocks of a quilt; its seams are pressed toward the %s in all of them, since every unit of a step is pressed alike",
					c.Name, toward, lighter, c.Blocks, toward)
				return
			}
		}
	}
}

// Codes of the press plan's warnings.
const (
	warnRuleIdle  = "press-rule-idle"
	warnRuleMixed = "press-rule-mixed"
)

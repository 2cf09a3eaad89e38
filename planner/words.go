package planner

import (
	"fmt"
	"strings"
	"unicode"

	"quiltrun/planner/cloth"
)

// meaning is a word of the job file and the other words of the trade that
// plainly say the same.
type meaning struct {
	word   string
	others []string
}

// wordList is the words that may stand in one place of a job file.
type wordList []meaning

// find returns the job file's own word for what somebody wrote. Capitals,
// hyphens and the number of blanks do not matter.
func (l wordList) find(text string) (string, bool) {
	said := foldWords(text)
	for _, m := range l {
		if said == foldWords(m.word) {
			return m.word, true
		}
		for _, other := range m.others {
			if said == other {
				return m.word, true
			}
		}
	}
	return "", false
}

// words is the job file's own words.
func (l wordList) words() []string {
	all := make([]string, len(l))
	for i, m := range l {
		all[i] = m.word
	}
	return all
}

// foldWords brings a phrase into the form in which phrases are compared: small
// letters, one blank where there were blanks, hyphens or underscores.
func foldWords(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), isWordEnd), " ")
}

// isWordEnd counts the hyphen that does not break, which word processors write.
func isWordEnd(c rune) bool { return c == '-' || c == '_' || c == '‑' || unicode.IsSpace(c) }

// The words of each place. Synonyms are given as foldWords leaves them.
var (
	formWords = wordList{
		{string(Yardage), []string{"yard", "yards", "metre", "metres", "bolt", "by the yard", "by the metre", "off the bolt"}},
		{string(FatQuarter), []string{"fat quarters", "fq", "fqs"}},
		{string(FatEighth), []string{"fat eighths", "fat 8th", "fat 8ths"}},
		{string(PreCutSquares), []string{"precut squares", "pre cut square", "charm squares", "squares"}},
		{string(PreCutStrips), []string{"precut strips", "pre cut strip", "strips"}},
	}
	unitWords = wordList{
		{"in", []string{"inch", "inches"}},
		{"cm", []string{"centimetre", "centimetres", "centimeter", "centimeters"}},
	}
	settingWords = wordList{
		{string(Straight), nil},
		{string(OnPoint), nil},
	}
	dealWords = wordList{
		{string(DealDiagonal), nil},
		{string(DealRows), nil},
		{string(Scatter), nil},
	}
	fillWords   = wordList{{"fill", nil}}
	finishWords = wordList{
		{string(ByMachine), []string{"by machine"}},
		{string(ByHand), []string{"by hand"}},
	}
	densityWords = wordList{
		{string(Dense), nil},
		{string(Medium), nil},
		{string(Open), nil},
	}
	quilterWords = wordList{
		{"self", nil},
		{"sent out", []string{"send out"}},
	}
	styleWords = wordList{
		{string(cloth.Simple), nil},
		{string(cloth.Nested), nil},
	}
	grainWords = wordList{
		{string(Lengthwise), []string{"lengthways", "along the selvage", "vertical"}},
		{string(Crosswise), []string{"crossways", "across", "pieced", "horizontal"}},
	}
	jointWords = wordList{
		{string(DiagonalJoint), []string{"mitred", "on the diagonal"}},
		{string(StraightJoint), []string{"butted"}},
	}
	biasWords = wordList{
		{"straight", []string{"straight grain", "on the straight"}},
		{"bias", []string{"on the bias"}},
	}
	battingWords = wordList{
		{"self", nil},
		{"quilter", []string{"the quilter"}},
	}
	methodWords = wordList{
		{"two", []string{"2", "2 at a time", "two at a time"}},
		{"four", []string{"4", "4 at a time", "four at a time"}},
		{"eight", []string{"8", "8 at a time", "eight at a time"}},
	}
	yesWords = wordList{
		{"yes", []string{"true", "on", "y"}},
		{"no", []string{"false", "off", "n"}},
	}
)

// AllOf is a run of two or more taken together: "both", "all 3".
func AllOf(n int) string {
	if n == 2 {
		return "both"
	}
	return fmt.Sprintf("all %d", n)
}

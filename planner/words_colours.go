package planner

import (
	"slices"
	"strings"
)

// isColour reports whether a text is #rgb, #rrggbb or a named colour of CSS;
// capitals do not matter.
func isColour(text string) bool {
	if digits, ok := strings.CutPrefix(text, "#"); ok {
		n := hexDigits(digits)
		return n == len(digits) && (n == 3 || n == 6)
	}
	return slices.Contains(colourNames, strings.ToLower(text))
}

// hexDigits counts the hexadecimal digits with which a text begins.
func hexDigits(text string) int {
	return len(text) - len(strings.TrimLeft(text, "0123456789abcdefABCDEF"))
}

// colourNames is the 148 named colours of CSS Color Module Level 4, section
// 6.1, W3C Candidate Recommendation.
var colourNames = strings.Fields(`
aliceblue antiquewhite aqua aquamarine azure beige bisque black blanchedalmond blue blueviolet brown
burlywood cadetblue chartreuse chocolate coral cornflowerblue cornsilk crimson cyan darkblue
darkcyan darkgoldenrod darkgray darkgreen darkgrey darkkhaki darkmagenta darkolivegreen darkorange
darkorchid darkred darksalmon darkseagreen darkslateblue darkslategray darkslategrey darkturquoise
darkviolet deeppink deepskyblue dimgray dimgrey dodgerblue firebrick floralwhite forestgreen fuchsia
gainsboro ghostwhite gold goldenrod gray green greenyellow grey honeydew hotpink indianred indigo
ivory khaki lavender lavenderblush lawngreen lemonchiffon lightblue lightcoral lightcyan
lightgoldenrodyellow lightgray lightgreen lightgrey lightpink lightsalmon lightseagreen lightskyblue
lightslategray lightslategrey lightsteelblue lightyellow lime limegreen linen magenta maroon
mediumaquamarine mediumblue mediumorchid mediumpurple mediumseagreen mediumslateblue
mediumspringgreen mediumturquoise mediumvioletred midnightblue mintcream mistyrose moccasin
navajowhite navy oldlace olive olivedrab orange orangered orchid palegoldenrod palegreen
paleturquoise palevioletred papayawhip peachpuff peru pink plum powderblue purple rebeccapurple red
rosybrown royalblue saddlebrown salmon sandybrown seagreen seashell sienna silver skyblue slateblue
slategray slategrey snow springgreen steelblue tan teal thistle tomato turquoise violet wheat white
whitesmoke yellow yellowgreen`)

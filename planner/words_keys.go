package planner

import (
	"strings"
	"sync"
)

// keySynonyms is the trade's other words for keys of the job file. Each counts
// only where the key it stands for may be given.
var keySynonyms = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"colourway":   "colourways",
		"colorway":    "colourways",
		"colorways":   "colourways",
		"color":       "colour",
		"wadding":     "batting",
		"background":  "ground",
		"backgrounds": "ground",
		"grounds":     "ground",
		"prints":      "print",
		"corners":     "corner",
		"sides":       "side",
		"center":      "centre",
		"centers":     "centre",
		"centres":     "centre",
		"squares":     "square",
		"border":      "borders",
		"fabric":      "fabrics",
		"cornerstone": "cornerstones",
	}
})

// hyphened writes a key of two words as job files do.
var hyphened = strings.NewReplacer(" ", "-", "_", "-")

// keyNamed finds which of the keys that may stand here is meant. Blanks and
// underscores between words count as the hyphens they stand for.
func keyNamed(written string, valid []string) (string, bool) {
	tidy := hyphened.Replace(written)
	for _, key := range valid {
		if key == tidy {
			return key, true
		}
	}
	meant, ok := keySynonyms()[tidy]
	if !ok {
		return "", false
	}
	for _, key := range valid {
		if key == meant {
			return key, true
		}
	}
	return "", false
}

// keyExamples is a key as it may be written, for the end of an error.
var keyExamples = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"job":          "job: estuary-lap",
		"title":        "title: Estuary lap quilt",
		"client":       "client: Pilot Lane Library",
		"received":     "received: 2026-11-02",
		"due":          "due: 2027-02-12",
		"quantity":     "quantity: 2",
		"units":        "units: cm",
		"seam":         "seam: 1/4",
		"prewash":      "prewash: yes",
		"fabrics":      "fabrics: {Kelp: {form: fat quarter, on-hand: 4}}",
		"block":        "block: {make: four-patch, square: 5}",
		"colourways":   "colourways: {tide: {blocks: 8, print: Kelp, ground: Foam}}",
		"press":        "press: darker",
		"layout":       "layout: {across: 4, down: 2}",
		"borders":      "borders: [{width: 3, fabric: Foam}]",
		"backing":      "backing: {fabric: Foam, extra: 4}",
		"batting":      "batting: {extra: 4}",
		"binding":      "binding: {fabric: Kelp, strip: 2 1/2}",
		"quilting":     "quilting: {by: self, density: medium}",
		"form":         "form: fat quarter",
		"width":        "width: 3",
		"size":         "size: 18 x 22",
		"on-hand":      "on-hand: 4 (on-hand: 1 1/2 yd for yardage)",
		"colour":       `colour: "#2e6f57" or colour: slategray`,
		"directional":  "directional: true",
		"make":         "make: four-patch recut",
		"steps":        "steps: {print: {cut: print, size: 7}, block: {sew: [[print, print]]}}",
		"square":       "square: 5",
		"offset":       "offset: 1 1/4",
		"strip":        "strip: 2 1/2",
		"length":       "length: 6 1/2",
		"unit":         "unit: 4 1/2",
		"method":       "method: two",
		"blocks":       "blocks: 8",
		"was":          "was: tide",
		"print":        "print: [Kelp, Cormorant]",
		"ground":       "ground: Foam",
		"corner":       "corner: [Kelp, Cormorant]",
		"side":         "side: Foam",
		"centre":       "centre: Dunes",
		"strips":       "strips: [Kelp, Foam, Cormorant]",
		"across":       "across: 4",
		"down":         "down: 2",
		"setting":      "setting: straight",
		"order":        "order: [[tide, dune], [dune, tide]]",
		"turn":         "turn: [[0, 90], [90, 0]]",
		"sashing":      "sashing: {width: 2, fabric: Foam}",
		"triangles":    "triangles: Foam",
		"cut":          "cut: 3 1/2",
		"fabric":       "fabric: Foam",
		"cornerstones": "cornerstones: Kelp",
		"edge":         "edge: no",
		"extra":        "extra: 4",
		"finish":       "finish: machine",
		"by":           "by: self",
		"density":      "density: medium",
		"lead-days":    "lead-days: 42",
		"cutting":      "cutting: {style: simple, layers: 4}",
		"style":        "style: simple",
		"layers":       "layers: 4",
		"square-up":    "square-up: 1/2",
		"selvage":      "selvage: 1",
		"shrinkage":    "shrinkage: 3 %",
		"spares":       "spares: {pieces: 4, blocks: 1}",
		"pieces":       "pieces: 4",
		"bolt":         "bolt: 44",
		"grain":        "grain: lengthwise",
		"seams":        "seams: crosswise",
		"packages":     "packages: [72 x 90, 81 x 96]",
		"roll":         "roll: 96",
		"joins":        "joins: diagonal",
		"allowance":    "allowance: 10",
		"diagonal":     "order: {diagonal: fill}",
		"rows":         "order: {rows: fill}",
	}
})

// writeAs is the hint that shows how something is written, "" for no example.
func writeAs(example string) string {
	if example == "" {
		return ""
	}
	return "write it as in " + example
}

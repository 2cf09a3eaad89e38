package render

import (
	"bytes"
	"encoding/json"
	"io"
	"maps"
	"regexp"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
)

const contract = "../../../testdata/contract/"

// conforms checks one output against its schema, and what no schema can say:
// that numbers are written without exponent, −0 or blanks to trim.
func conforms(t *testing.T, schema string, show func(io.Writer) error) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, show(&out))
	compiled, err := jsonschema.NewCompiler().Compile(contract + schema + ".schema.json")
	require.NoError(t, err)
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
	require.NoError(t, err)
	assert.NoError(t, compiled.Validate(value))
	assert.Equal(t, 1, strings.Count(out.String(), "\n"), "one line")
	plainNumbers(t, out.Bytes())
}

var plainNumber = regexp.MustCompile(`^(0|-?[1-9][0-9]*|-?(0|[1-9][0-9]*)\.[0-9]*[1-9])$`)

func plainNumbers(t *testing.T, out []byte) {
	t.Helper()
	decode := json.NewDecoder(bytes.NewReader(out))
	decode.UseNumber()
	for {
		token, err := decode.Token()
		if err == io.EOF {
			return
		}
		require.NoError(t, err)
		if n, ok := token.(json.Number); ok {
			assert.Regexp(t, plainNumber, n.String())
		}
	}
}

// contractPlans are all examples, inches and centimetres, one quilt and two,
// and jobs at the edges of what a sheet has to show.
func contractPlans(t *testing.T) map[string]planner.Plan {
	t.Helper()
	plans := map[string]planner.Plan{"hundred fabrics": hundredFabrics(t), "many scripts": awkward(t), "four hundred blocks": fourHundred(t)}
	for _, name := range examples(t) {
		plans[name] = example(t, name)
	}
	return plans
}

func TestPlanKeepsItsContract(t *testing.T) {
	for name, plan := range contractPlans(t) {
		t.Run(name, func(t *testing.T) {
			conforms(t, "plan", func(w io.Writer) error { return PlanJSON(w, plan) })
		})
	}
}

func TestLeftKeepsItsContract(t *testing.T) {
	for name, plan := range contractPlans(t) {
		for label, of := range map[string]int{"nothing logged": 0, "half": 2, "done": 1} {
			t.Run(name+" "+label, func(t *testing.T) {
				state := booked(t, plan, of)
				conforms(t, "left", func(w io.Writer) error { return LeftJSON(w, state, noon) })
				conforms(t, "left-all", func(w io.Writer) error { return LeftAllJSON(w, []tracker.State{state, state}, noon) })
			})
		}
	}
	conforms(t, "left-all", func(w io.Writer) error { return LeftAllJSON(w, nil, noon) })
}

func TestDatesKeepTheirContract(t *testing.T) {
	asOf := planner.Date{Year: 2026, Month: 11, Day: 20}
	for _, list := range [][]forecast.Answer{nil, answers()} {
		conforms(t, "when", func(w io.Writer) error { return WhenJSON(w, asOf, list) })
	}
	conforms(t, "hours", func(w io.Writer) error { return HoursJSON(w, asOf, hours()) })
	set := tracker.Event{ID: "evening", Seq: 3, Kind: tracker.Hours}
	conforms(t, "hours-set", func(w io.Writer) error { return HoursSetJSON(w, asOf, hours(), set, true) })
}

func TestReceiptsKeepTheirContract(t *testing.T) {
	for _, r := range receipts(t) {
		conforms(t, r.schema, r.json)
	}
}

// shownPlan is what a script reads.
func shownPlan(t *testing.T, plan planner.Plan) map[string]any {
	t.Helper()
	var out map[string]any
	require.NoError(t, json.Unmarshal([]byte(shownBy(t, func(w *bytes.Buffer) error { return PlanJSON(w, plan) })), &out))
	return out
}

func TestLengthsAreInTheJobsUnit(t *testing.T) {
	// Hand-worked: nine-patch recut of 12 cm squares with 0.75 cm seams makes
	// 3×12 − 4×0.75 = 33 cm, recut and sewn 33 − 1.5 = 31.5 raw, 30 finished;
	// 3 across and 4 down are 90 × 120 cm.
	cm := shownPlan(t, example(t, "saltmarsh-cot"))
	assert.Equal(t, "cm", cm["unit"])
	assert.Equal(t, map[string]any{"width": 90.0, "height": 120.0}, cm["quilt"].(map[string]any)["finished"])
	// Hand-worked: 4 and 5 blocks of 12 in and two borders of 1 and 3 in.
	in := shownPlan(t, example(t, "estuary-lap"))
	assert.Equal(t, "in", in["unit"])
	assert.Equal(t, map[string]any{"width": 56.0, "height": 68.0}, in["quilt"].(map[string]any)["finished"])
}

func TestJSONKeysComeInTheContractsOrder(t *testing.T) {
	text := shownBy(t, func(w *bytes.Buffer) error { return PlanJSON(w, example(t, "estuary-lap")) })
	last := -1
	for _, key := range []string{"schema", "unit", "warnings", "job", "quilt", "colourways", "blocks", "joins", "fabrics", "operations", "materials", "minutes"} {
		at := topLevel(t, text, key)
		assert.Greater(t, at, last, key)
		last = at
	}
}

// topLevel is where a key of the outermost object stands in a text.
func topLevel(t *testing.T, text, key string) int {
	t.Helper()
	decode := json.NewDecoder(strings.NewReader(text))
	depth := 0
	for {
		token, err := decode.Token()
		require.NoError(t, err, key)
		switch token {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		case key:
			if depth == 1 {
				return int(decode.InputOffset())
			}
		}
	}
}

func TestDoneAndLeftMakeTheCount(t *testing.T) {
	for _, of := range []int{0, 1, 2, 3} {
		for _, lot := range leftOf(booked(t, example(t, "harbour-pair"), of), noon).Lots {
			for _, o := range lot.Operations {
				assert.Equal(t, o.Count, o.Done+o.Left, o.Key)
			}
		}
	}
}

// A schema that accepts anything protects nothing: each field of an output is
// missed when it is not there, and so is the kind of each.
func TestSchemasMissEveryField(t *testing.T) {
	plan, asOf := example(t, "estuary-lap"), planner.Date{Year: 2026, Month: 11, Day: 20}
	shows := map[string]func(io.Writer) error{
		"plan":     func(w io.Writer) error { return PlanJSON(w, plan) },
		"cut":      func(w io.Writer) error { return CuttingJSON(w, plan.Job, cloth.Simple, allCuts(t, plan, cloth.Simple)) },
		"left":     func(w io.Writer) error { return LeftJSON(w, booked(t, plan, 2), noon) },
		"left-all": func(w io.Writer) error { return LeftAllJSON(w, []tracker.State{booked(t, plan, 2)}, noon) },
		"when":     func(w io.Writer) error { return WhenJSON(w, asOf, answers()) },
		"hours":    func(w io.Writer) error { return HoursJSON(w, asOf, hours()) },
	}
	for _, r := range receipts(t) {
		shows[r.schema] = r.json
	}
	maps.Copy(shows, sightsJSON(t))
	state, drift := drifting(t, plan)
	shows["measure"] = func(w io.Writer) error { m := unevenBlocks(t, plan); m.Drift = drift.Drift; return MeasuredJSON(w, m) }
	shows["measure-list"] = func(w io.Writer) error { return MeasurementsJSON(w, state) }
	shows["compare"] = func(w io.Writer) error { return ComparedJSON(w, comparison(t)) }
	maps.Copy(shows, stockJSON(t))
	maps.Copy(shows, timesOfAll(t))
	for name, show := range shows {
		compiled, err := jsonschema.NewCompiler().Compile(contract + name + ".schema.json")
		require.NoError(t, err)
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(shownBy(t, func(w *bytes.Buffer) error { return show(w) })))
		require.NoError(t, err)
		eachObject(value, func(object map[string]any) {
			for key, was := range object {
				if key == "print" || key == "ground" {
					continue // roles are the job's own
				}
				delete(object, key)
				assert.Error(t, compiled.Validate(value), "%s without %s", name, key)
				object[key] = []any{map[string]any{}}
				assert.Error(t, compiled.Validate(value), "%s with another kind of %s", name, key)
				object[key] = was
			}
		})
	}
}

// eachObject visits the outermost object, and of every list in it the first
// object.
func eachObject(value any, visit func(map[string]any)) {
	switch v := value.(type) {
	case map[string]any:
		visit(v)
		for _, child := range v {
			eachObject(child, visit)
		}
	case []any:
		if len(v) > 0 {
			eachObject(v[0], visit)
		}
	}
}

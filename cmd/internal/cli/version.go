package cli

import (
	"context"
	"encoding/json"
	"fmt"
)

// schema is the version of every --json answer, and of the store's events.
const schema = 1

// runVersion says which program this is.
func runVersion(_ context.Context, env *Env) error {
	if env.given.json {
		return json.NewEncoder(env.Out).Encode(struct {
			Schema   int    `json:"schema"`
			Revision string `json:"revision"`
		}{schema, env.Revision()})
	}
	_, err := fmt.Fprintf(env.Out, "quiltrun revision %s, schema %d\n", env.Revision(), schema)
	return err
}

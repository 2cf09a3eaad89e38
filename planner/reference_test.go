package planner

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The job file that the documentation goes through key by key is one that can be
// made, and no key is left out of it.
func TestTheDocumentedJobFileHasEveryKeyAndPlans(t *testing.T) {
	data, err := os.ReadFile("../examples/README.md")
	require.NoError(t, err)
	_, file, found := strings.Cut(string(data), "```yaml\n")
	require.True(t, found)
	file, _, _ = strings.Cut(file, "```")
	job, err := Parse("documented.yaml", []byte(file))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	require.NoError(t, err)
	for key := range keyExamples() {
		assert.Regexp(t, `\b`+key+`\b`, file, "the documented job file has no %s", key)
	}
}

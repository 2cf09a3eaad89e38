package shelf

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// A maker with thirty jobs, each cut in a dozen entries, and sixty things on the
// shelf.
func BenchmarkFold(b *testing.B) {
	w := &world{t: b}
	for i := range 30 {
		require.NoError(b, w.enter(foam(72*36*1000, fmt.Sprint("lot ", i))))
		require.NoError(b, w.enter(kelp(3, "")))
	}
	for i := range 30 {
		job := w.book(dunes(fmt.Sprint("job-", i), 12, ""))
		for range 12 {
			require.NoError(b, w.log(job, "cut", "Foam", 1))
			require.NoError(b, w.log(job, "cut", "Kelp", 1))
		}
	}
	for b.Loop() {
		w.fold()
	}
}

package store_test

import "quiltrun/tracker/store"

// openings are the two ways to open a log, for tests of what both must do.
var openings = map[string]func(string, store.Waiting) (*store.Store, error){
	"reading": store.OpenForReading,
	"writing": store.OpenForWriting,
}

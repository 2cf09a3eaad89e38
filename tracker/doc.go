// Package tracker follows a booked job: events that say what happened, the
// ledger that booking froze, and the fold that makes progress of the two. It
// is pure: it reads no clock, no file and no store.
package tracker

// Package store keeps the log: the file in which every event of every job is
// written and never changed. It is the one place that knows bbolt.
//
// The file holds three buckets:
//
//	meta                 what the file is, its schema, the notes already given, and
//	                     the jobs in which a clock was ever started
//	jobs/JOB/events      one job's events
//	maker/events         what the maker sets for all jobs: hours, days off
//
// An event is stored as JSON under its sequence number, eight bytes, the
// highest first, so that the order of the keys is the order of the log. The
// numbers of one bucket run from 1 without a gap.
//
// An entry is acknowledged when its one bbolt transaction has been committed,
// which means that the disk has it: it survives a kill and a power cut. Reading
// changes no byte of the file and creates nothing.
package store

package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"strconv"

	"go.etcd.io/bbolt"
)

// Schema is the version of the file's layout that this program writes.
const Schema = 1

// The names in the file. They never change their meaning.
var (
	metaName   = []byte("meta")
	jobsName   = []byte("jobs")
	makerName  = []byte("maker")
	eventsName = []byte("events")

	fileKey   = []byte("file")
	schemaKey = []byte("schema")
	noteStem  = "note:"
)

// fileMark tells a log from any other file that bbolt could open.
const fileMark = "quiltrun log"

// layOut makes the buckets of an empty log.
func layOut(tx *bbolt.Tx) error {
	meta, err := tx.CreateBucket(metaName)
	if err != nil {
		return err
	}
	maker, err := tx.CreateBucket(makerName)
	if err != nil {
		return err
	}
	_, errEvents := maker.CreateBucket(eventsName)
	_, errJobs := tx.CreateBucket(jobsName)
	return errors.Join(errEvents, errJobs,
		meta.Put(fileKey, []byte(fileMark)),
		meta.Put(schemaKey, []byte(strconv.Itoa(Schema))))
}

// recognise makes sure that an open file is a log that this program can read,
// and whole: a file that was cut short still opens.
func recognise(path string, tx *bbolt.Tx, size int64) error {
	if size < tx.Size() {
		return &DamagedError{Path: path, Fault: "it ends too early"}
	}
	meta := tx.Bucket(metaName)
	if meta == nil || string(meta.Get(fileKey)) != fileMark {
		return &DamagedError{Path: path, Fault: "another program wrote it"}
	}
	schema, err := strconv.Atoi(string(meta.Get(schemaKey)))
	if err != nil || schema < 1 || tx.Bucket(jobsName) == nil || eventsOf(tx, "") == nil {
		return &DamagedError{Path: path, Fault: "a part of it is missing", Err: err}
	}
	if schema > Schema {
		return &NewerError{Path: path, Schema: schema, Know: Schema}
	}
	return nil
}

// eventsOf is the bucket of one job's events, or of the maker's for "". It is
// nil for a job that was never booked.
func eventsOf(tx *bbolt.Tx, job string) *bbolt.Bucket {
	parent := tx.Bucket(makerName)
	if job != "" {
		parent = tx.Bucket(jobsName).Bucket([]byte(job))
	}
	if parent == nil {
		return nil
	}
	return parent.Bucket(eventsName)
}

// makeEventsOf is eventsOf, made where it is not there yet.
func makeEventsOf(tx *bbolt.Tx, job string) (*bbolt.Bucket, error) {
	if b := eventsOf(tx, job); b != nil {
		return b, nil
	}
	parent, err := tx.Bucket(jobsName).CreateBucketIfNotExists([]byte(job))
	if err != nil {
		return nil, err
	}
	return parent.CreateBucketIfNotExists(eventsName)
}

// blank says that nothing has been logged in the file yet.
func blank(tx *bbolt.Tx) bool {
	job, _ := tx.Bucket(jobsName).Cursor().First()
	own, _ := eventsOf(tx, "").Cursor().First()
	return job == nil && own == nil
}

// seqKey is the key of an event, and seqOf reads it back.
func seqKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

func seqOf(key []byte) (uint64, error) {
	if len(key) != 8 {
		return 0, fmt.Errorf("a key of %d bytes", len(key))
	}
	return binary.BigEndian.Uint64(key), nil
}

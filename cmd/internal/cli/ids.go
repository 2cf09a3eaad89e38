package cli

import (
	"fmt"
	"io"

	"github.com/spf13/pflag"
)

// longestID bounds an entry's id, in bytes.
const longestID = 100

// idValue is the option --id of every command that writes.
type idValue struct{ id *string }

// registerID adds the option.
func registerID(flags *pflag.FlagSet, id *string) {
	flags.Var(idValue{id}, "id", "give the entry an `ID`; sent twice, it counts once")
}

// String and Type are what help shows: no default, and a word for the value.
func (v idValue) String() string { return "" }
func (v idValue) Type() string   { return "ID" }

// Set refuses ids that a log, a page or a shell could garble. An empty one is
// refused rather than replaced: a script that sends it means to repeat itself
// safely, and could not.
func (v idValue) Set(id string) error {
	if id == "" || len(id) > longestID {
		return wrong("--id takes 1 to %d characters", longestID)
	}
	for _, r := range id {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9':
		case r == '-', r == '_', r == '.', r == ':':
		default:
			return wrong("--id %q has %q in it", id, r).hint("use letters, digits and - _ . :")
		}
	}
	*v.id = id
	return nil
}

// entryID is the id that the maker gave for an entry, or a new one.
func (e *Env) entryID(given string) (string, error) {
	if given != "" {
		return given, nil
	}
	return newID(e.Random)
}

// newID is a random UUID (RFC 9562, version 4).
func newID(random io.Reader) (string, error) {
	var b [16]byte
	if _, err := io.ReadFull(random, b[:]); err != nil {
		return "", failed("no id could be made for the entry: %v", err).hint("give one with --id")
	}
	b[6] = b[6]&0x0f | 0x40
	b[8] = b[8]&0x3f | 0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", b[:4], b[4:6], b[6:8], b[8:10], b[10:]), nil
}

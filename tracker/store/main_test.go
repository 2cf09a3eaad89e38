package store_test

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// roleKey names the environment variable that turns the test program into one
// of its own child processes.
const roleKey = "QUILTRUN_STORE_TEST_ROLE"

// roles are what a child process can be told to do. Its arguments follow.
var roles = map[string]func(args []string) error{
	"log":      logEntries,
	"readonly": meetReadOnly,
}

func TestMain(m *testing.M) {
	role, ok := roles[os.Getenv(roleKey)]
	if !ok {
		os.Exit(m.Run())
	}
	if err := role(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// child is a process of the test program in one of its roles.
func child(program, role string, args ...string) *exec.Cmd {
	cmd := exec.Command(program, args...)
	cmd.Env = append(os.Environ(), roleKey+"="+role)
	return cmd
}

// logEntries appends entries to a job and acknowledges each by a line with its
// number. Arguments: path, job, how many.
func logEntries(args []string) error {
	count, err := strconv.Atoi(args[2])
	if err != nil {
		return err
	}
	s, err := store.OpenForWriting(args[0], store.Waiting{Limit: patient})
	if err != nil {
		return err
	}
	for i := range count {
		id := fmt.Sprintf("%d-%d", os.Getpid(), i)
		ev, _, err := s.Append(args[1], func([]tracker.Event) (tracker.Event, error) { return entry(id), nil })
		if err != nil {
			return err
		}
		if _, err := fmt.Fprintf(os.Stdout, "%d\n", ev.Seq); err != nil {
			return err
		}
	}
	return s.Close()
}

// meetReadOnly reads a log and tries to write it. Arguments: path.
func meetReadOnly(args []string) error {
	s, err := store.OpenForReading(args[0], store.Waiting{})
	if err != nil {
		return fmt.Errorf("reading: %w", err)
	}
	events, err := s.Events(job)
	if err != nil || len(events) != 1 {
		return fmt.Errorf("%d events, %w", len(events), err)
	}
	if err := s.Close(); err != nil {
		return err
	}
	_, err = store.OpenForWriting(args[0], store.Waiting{})
	var readOnly *store.ReadOnlyError
	if !errors.As(err, &readOnly) {
		return fmt.Errorf("writing: not a ReadOnlyError: %v", err)
	}
	fmt.Println(err)
	return nil
}

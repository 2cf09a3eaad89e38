// Package tick is the hands-free screen: it shows one row of a job's route so
// large that it is read from the machine, and checks work off at one key.
//
// Screen is the pure part: keys and answers of the log go in, lines to show and
// requests to write come out. Run drives it on a terminal, Lines with lines from
// a pipe. Both are handed what reads and writes the log, and never show a count
// that is not on disk.
package tick

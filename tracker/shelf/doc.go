// Package shelf adds up the maker's one stock of cloth, batting and thread: what
// was put there, less what the booked jobs have cut and still need. What jobs
// take is never written down: it follows from each job's ledger and log. The
// package is pure.
package shelf

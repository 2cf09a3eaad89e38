// Package forecast answers when: from the remaining work of the booked jobs
// and the maker's working hours, the dates on which each job is done at 50, 80
// and 95 % confidence. It is pure: today is an argument.
//
// # Order
//
// There is one maker. Jobs are worked off in order of due date, which keeps
// the largest lateness as small as it can be (Jackson's rule; J. R. Jackson
// 1955, Scheduling a production line to minimize maximum tardiness, UCLA,
// cited from memory). Jobs without a due date come last.
//
// # Minutes
//
// The remaining minutes of the queue up to and including a job are T = M·S.
//
// S is the sum over the operation keys of the table's expected minutes times
// the key's own factor, a lognormal of mean 1 whose logarithm has the spread
// that the table gives. One key has one factor for all its counts, lots and
// jobs, since who presses slowly does so at every press; the factors of
// different keys are independent. Where setup and unit of a key have different
// spreads, both follow the same normal variable. S is then taken as lognormal
// with the mean E and the variance Var of the sum, so that
// sigma_S² = ln(1 + Var/E²) (L. F. Fenton 1960, The sum of log-normal
// probability distributions in scatter transmission systems, IRE Trans.
// Commun. Syst. 8, 57-67).
//
// M is what this maker's pace is to the table's, common to everything. It is a
// lognormal of mean 1, so that the mean of T stays the table's, and spread
// ln 3 / (2 · 1.645) = 0.334: published times for one and the same quilt-top
// race differ by a factor of three between makers (35 to 105 minutes in
// quilters' own accounts of 2011 and 2012), read
// here as the distance from the 5 to the 95 % quantile. T is lognormal with
// sigma_T² = sigma_M² + sigma_S².
//
// # Dates
//
// The date at confidence p is the day on which the p-quantile of T is worked
// off in the calendar. The chance of being on time is the greatest p whose date
// is not after the due date, found by halving the distance between two of the
// dates that are shown, so that it never contradicts them.
//
// A wait (quilting sent out) takes calendar days but no working time. It begins
// on the day on which the work before it is done; the job's remaining work is
// open from the day after its return, and then goes before the jobs due later,
// which meanwhile have gone on. What was sent out already is back so many days
// after the date of the entry with its last count: only the days that remain
// count, and nothing after it is earlier. Its wait ends before that with the
// first count of anything that comes after it. What a job adds to the quantile of the queue
// is booked into the first free minutes of the calendar, job by job. Without
// waits more work never gives an earlier date, nor more hours a later one.
// Behind a job that waits both can happen, as on the bench: with longer hours
// the other quilt comes back sooner and takes its turn sooner. For the same
// reason a higher confidence could mean an earlier day there; the later day is
// then kept.
package forecast

// Package render turns plans, progress and forecasts into text for a terminal
// and into JSON. It takes a writer and a value, asks no clock and no store, and
// computes nothing that the planner or the tracker has not worked out.
package render

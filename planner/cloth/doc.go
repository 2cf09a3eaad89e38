// Package cloth works out cloth: cutting plans for pieces on yardage and on
// sheets, backing panels, batting and binding. Lengths are exact; what is cut is
// rounded up, what a cut yields is rounded down.
//
// A cutting plan puts every piece of one fabric in its place and lists the ruler
// cuts in the order to make them. It carries a proved bound, so that its gap says
// how much a better plan could save at most. How near the plans come to the
// optima of published sets is measured by
//
//	go test ./planner/cloth -run TestGapTable -v -gaps
package cloth

// Package cloth works out cloth: strips and sheets for pieces, backing panels,
// batting and binding. Lengths are exact; what is cut is rounded up, what a cut
// yields is rounded down.
package cloth

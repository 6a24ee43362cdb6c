// Package measure reads and writes lengths, angles and slopes the way that
// builders do: millimetres or feet, inches and fractions; degrees; 1 in n.
//
// It is the one place where a figure is rounded. Inside the program a length is
// a float64 in millimetres and an angle a float64 in radians; only a Format
// turns one into words.
//
// Left out: any unit that is not printed on a tape measure.
package measure

// Package quantity is a number with a unit: it reads one from text, converts
// it, and prints it in metric or US customary units.
//
// Inside the program every value is held in SI units (metres, seconds,
// kilograms, kelvin, ...). A [Kind] says what is measured. [Parse] reads what a
// person wrote for a kind and refuses whatever could be read in two ways; its
// [Error] says what to write instead.
//
//	q, err := quantity.Parse(quantity.Flow, "1360 L/h")
//	q.SI                                                // 0.000377... m3/s
//	q.String()                                          // "1360 L/h"
//	quantity.Format(quantity.Flow, q.SI, quantity.US)   // "359 gal(US)/h"
//
// Two ways of printing serve two readers. [Quantity.String] is for files: it
// reads back to the same bits. [Format] and [FormatIn] are for people: they
// choose or take a unit and round.
//
// The factors are exact fractions, so a value that was read is the number
// nearest to what was written.
package quantity

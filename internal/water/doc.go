// Package water gives the properties of fresh water that a loop needs: how heavy it is, how easily it flows, when it boils, how hard
// the air above presses on it, how much oxygen it takes from that air, how much of the ammonia in it is poisonous, and how its acid,
// alkalinity and carbon dioxide hang together.
//
// Everything is in SI: temperature in kelvin, pressure in pascal, length in metre, what is dissolved in kilogram per cubic metre; pH is
// a plain number. Each function answers with a number and a [Validity], which says whether the formula was made for that input.
package water

// G is the standard acceleration of free fall, in metre per second squared.
//
// Source: 3rd General Conference on Weights and Measures, 1901, resolution 2.
const G = 9.80665

// ZeroCelsius is 0 degC, in kelvin.
const ZeroCelsius = 273.15

// Package reference holds nothing but tests: every table in testdata/reference is a list of numbers that others published, and the
// runner here works each of them out again with our functions.
//
// A table is a CSV file, one subject a file, with the columns
//
//	id         unique over all tables
//	what       the function to call, as registered in the test file of its subject
//	inputs     name=value unit, separated by semicolons
//	answer     the number the source gives
//	unit       its unit
//	tolerance  relative ("1 %") or absolute ("0.5 mm")
//	source     author or body, year, title, table or example
//	sure       published, derived (worked out from published formulas by other code than ours) or from memory
//	kind       holds: ours must agree; trap: a known misprint or mistake, ours must NOT agree
//
// To add a subject: a table, and a test file here that registers its functions.
package reference

package report

import (
	"encoding/csv"
	"io"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// column is one column of numbers: a level, what is left in the store, or a flow.
type column struct {
	name, subject string
	kind          quantity.Kind
	head, unit    string
	decimals      int
}

// CoursesCSV writes the levels and flows of scenes in time as comma-separated
// values: a row for every step of the solver, a column for every vessel and line.
// Every head but those of numbers is a word of ours or stands behind one, so that
// no cell can be taken for a formula; numbers may be below zero.
//
// Source: the form is that of RFC 4180, with plain line ends.
func CoursesCSV(w io.Writer, s *system.System, list []working.Followed, o Options) error {
	p := newPage(&review.Review{System: s}, o)
	columns := p.columns(list)
	head := []string{"case", "fault", "time (s)"}
	for _, c := range columns {
		head = append(head, c.head+" ("+c.unit+")")
	}
	out := csv.NewWriter(w)
	if err := out.Write(append(head, "happens")); err != nil {
		return err
	}
	for _, f := range list {
		if err := p.csvRows(out, f, columns); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// columns is every course of some scenes, levels first, in the order in which they come.
func (p *page) columns(list []working.Followed) []column {
	var levels, flows []column
	put := func(to *[]column, c column) {
		if !slices.ContainsFunc(*to, func(have column) bool { return have.subject == c.subject }) {
			*to = append(*to, c)
		}
	}
	high, highDecimals, flow := "mm", 1, "L/h"
	if p.in == quantity.US {
		high, highDecimals, flow = "in", 3, "gal(US)/h"
	}
	for _, f := range list {
		for _, c := range f.Levels {
			one := column{c.Name, c.Subject, quantity.Length, "level of " + c.Subject, high, highDecimals}
			if p.isStore(c.Subject) {
				one.kind, one.head, one.unit, one.decimals = quantity.Fraction, "left in the store", "%", 1
			}
			put(&levels, one)
		}
		for _, c := range f.Flows {
			put(&flows, column{c.Name, c.Subject, quantity.Flow, "flow of " + c.Subject, flow, 1})
		}
	}
	return append(levels, flows...)
}

func (p *page) csvRows(out *csv.Writer, f working.Followed, columns []column) error {
	if len(f.Levels) == 0 {
		return nil
	}
	of := map[string]map[string]working.Series{"level": {}, "flow": {}}
	for _, c := range append(slices.Clone(f.Levels), f.Flows...) {
		of[c.Name][c.Subject] = c
	}
	waits := slices.Clone(f.Happened)
	for i, t := range f.Levels[0].T {
		row := []string{f.Case, f.Fault, fixed(t, 2)}
		for _, c := range columns {
			cell := ""
			if course, there := of[c.name][c.subject]; there {
				if x, ok := quantity.Convert(c.kind, course.Y[i], c.unit); ok {
					cell = fixed(x, c.decimals)
				}
			} else if c.name == "flow" {
				cell = fixed(0, c.decimals) // a line through which nothing runs has no course
			}
			row = append(row, cell)
		}
		var now []string
		for len(waits) > 0 && waits[0].At <= t {
			now = append(now, p.happenedWords(waits[0].What, []string{waits[0].Subject}))
			waits = waits[1:]
		}
		if err := out.Write(append(row, strings.Join(now, "; "))); err != nil {
			return err
		}
	}
	return nil
}

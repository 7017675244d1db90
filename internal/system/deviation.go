package system

import (
	"bytes"
	"sync"

	"dryfit/schema"
)

// Deviation is leave to differ from one clause, as it is written: a deviation permit, or
// a concession for what is built already.
type Deviation struct {
	Concession           bool
	Clause, Subject      string
	Reason, Instead, Who string
	Since, Until         string // days, year first, so that they sort as text; Since may be empty
	Pointer              string
	Place                Place
}

// Deviations is the permits and concessions of the file, in their order.
func (s *System) Deviations() []Deviation { return s.Document.deviations(s.reading) }

// permitRules is the schema of a file of permits, compiled on first use.
var permitRules = sync.OnceValues(func() (*Rules, error) { return Compile(schema.Permits) })

// ReadPermits reads a file that holds permits and concessions alone, beside a system
// file. It tells all that is wrong with it at once; only a file without a problem gives any.
func ReadPermits(file string, data []byte) ([]Deviation, []Problem) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, []Problem{{File: file, Line: 1, Column: 1, Found: "nothing", Write: "write `permits:` and under it one entry a permit, or take the file away"}}
	}
	rules, err := permitRules()
	if err != nil {
		return nil, []Problem{{File: file, Found: "a schema that does not compile: " + err.Error(), Write: "report this as a fault of dryfit"}}
	}
	doc, problems := ReadWith(rules, file, data)
	if doc == nil {
		return nil, problems
	}
	ps := newProblems(doc)
	list := doc.deviations(&reading{looked: &looked{at: map[string]bool{}}})
	holdDays(list, ps)
	if len(ps.list) > 0 {
		return nil, ps.sorted()
	}
	return list, nil
}

// holdDays refuses leave that ends before it begins.
func holdDays(list []Deviation, ps *problems) {
	for _, d := range list {
		if d.Since > d.Until && d.Until != "" {
			ps.add(d.Pointer+"/since", "`"+d.Since+"`, which is after the last day, "+d.Until, "write a first day that is not after the last one")
		}
	}
}

func (doc *Document) deviations(r *reading) []Deviation {
	var out []Deviation
	for _, kind := range []string{"permits", "concessions"} {
		list := cursor{doc.at("/" + kind), "/" + kind, r}
		list.items(func(_ int, c cursor) {
			word := func(key string) string { text, _ := c.get(key).word().Value(); return text }
			d := Deviation{
				Concession: kind == "concessions", Clause: word("clause"), Subject: word("subject"),
				Reason: word("reason"), Instead: word("instead"), Who: word("who"), Since: word("since"), Until: word("until"),
				Pointer: c.pointer, Place: doc.Place(c.pointer),
			}
			if d.Clause != "" && d.Subject != "" && d.Reason != "" && d.Who != "" && d.Until != "" { // nothing was left out of it
				out = append(out, d)
			}
		})
	}
	return out
}

package judge

import (
	"fmt"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// grades say how sure a source is.
var grades = []string{"published", "common practice", "from memory", "project judgement"}

// metadata reads the one METADATA block of a clause and collects what is wrong with it.
type metadata struct {
	names names
	file  string
	row   int
	wrong Problems
}

func (m *metadata) say(format string, args ...any) {
	m.wrong = append(m.wrong, Problem{m.file, m.row, fmt.Sprintf(format, args...)})
}

// clause is the clause that a file describes. It is of use only if no problem is told.
func (s source) clause(n names) (*review.Clause, Problems) {
	m := &metadata{names: n, file: s.file, row: s.module.Package.Location.Row}
	c := &review.Clause{}
	var ok bool
	if c.Chapter, c.ID, ok = s.place(); !ok {
		m.say("the package of a clause is book.CHAPTER.CLAUSE")
		return c, m.wrong
	}
	if base := strings.TrimSuffix(path.Base(s.file), ".rego"); base != c.ID {
		m.say("clause %s stands in a file of the same name: %s.rego", c.ID, c.ID)
	}
	if len(s.module.Annotations) != 1 || s.module.Annotations[0].Scope != "package" {
		m.say("a clause has one METADATA block, with `scope: package`, above its package")
		return c, m.wrong
	}
	a := s.module.Annotations[0]
	m.row = a.Location.Row
	m.read(c, a)
	return c, m.wrong
}

func (m *metadata) read(c *review.Clause, a *ast.Annotations) {
	c.Title, c.Why = oneLine(a.Title), oneLine(a.Description)
	if c.Title == "" {
		m.say("title is missing: the clause in one sentence")
	}
	if c.Why == "" {
		m.say("description is missing: why the clause is there")
	}
	m.keys("custom", a.Custom, "strength", "safety", "caution", "cases", "limits", "sources", "shows", "remedies", "example")
	c.Strength = review.Strength(m.oneOf("strength", a.Custom["strength"], "shall", "should", "may"))
	c.Safety = m.yes("safety", a.Custom["safety"])
	c.Caution = oneLine(m.maybe("caution", a.Custom["caution"]))
	if c.Safety && c.Caution == "" {
		m.say("caution is missing: a safety clause says what to mind at the work itself")
	}
	c.Cases = known(m, "cases", a.Custom["cases"], "case", m.names.cases)
	if len(c.Cases) == 0 {
		m.say("cases is missing: the states that the clause is about, such as [always] or [run_worst]")
	}
	c.Limits = m.limits(a.Custom["limits"])
	c.Sources = m.sources(a.Custom["sources"])
	c.Shows = known(m, "shows", a.Custom["shows"], "quantity", m.names.quantities)
	c.Levers = m.levers(a.Custom["remedies"])
	c.Example = m.changes(a.Custom["example"])
}

// limits are the bounds in SI units, by name.
func (m *metadata) limits(x any) []review.Limit {
	var out []review.Limit
	all := m.mapping("limits", x)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		where := "limits/" + name
		one := m.mapping(where, all[name])
		m.keys(where, one, "of", "least", "most")
		l := review.Limit{Name: name, Quantity: m.text(where+"/of", one["of"])}
		d, ok := m.names.quantities[l.Quantity]
		if !ok {
			if l.Quantity != "" {
				m.say("%s/of: %s", where, unknown("quantity", l.Quantity, sorted(m.names.quantities)))
			}
			continue
		}
		l.Least = m.bound(where+"/least", one["least"], d.Kind)
		l.Most = m.bound(where+"/most", one["most"], d.Kind)
		switch {
		case one["least"] == nil && one["most"] == nil:
			m.say("%s needs least, most or both", where)
		case l.Least != nil && l.Most != nil && *l.Least > *l.Most:
			m.say("%s: least is more than most", where)
		}
		out = append(out, l)
	}
	return out
}

func (m *metadata) bound(where string, x any, kind quantity.Kind) *float64 {
	if x == nil {
		return nil
	}
	text, ok := scalar(x)
	if !ok {
		m.say("%s is no number; write it such as %s", where, kind.Example())
		return nil
	}
	q, err := quantity.Parse(kind, text)
	if err != nil {
		m.say("%s: %v", where, err)
		return nil
	}
	return &q.SI
}

func (m *metadata) sources(x any) []review.Source {
	var out []review.Source
	for i, one := range m.list("sources", x) {
		where := fmt.Sprintf("sources/%d", i)
		entry := m.mapping(where, one)
		m.keys(where, entry, "grade", "text")
		out = append(out, review.Source{
			Grade: m.oneOf(where+"/grade", entry["grade"], grades...),
			Text:  oneLine(m.text(where+"/text", entry["text"])),
		})
	}
	if len(out) == 0 {
		m.say("sources is missing: where the clause comes from; without one, {grade: project judgement, text: why}")
	}
	return out
}

func (m *metadata) levers(x any) []review.Lever {
	var out []review.Lever
	for i, one := range m.list("remedies", x) {
		where := fmt.Sprintf("remedies/%d", i)
		entry := m.mapping(where, one)
		m.keys(where, entry, "solve", "replace", "to")
		l := review.Lever{
			Solve:   m.maybe(where+"/solve", entry["solve"]),
			Replace: m.maybe(where+"/replace", entry["replace"]),
			Toward:  m.maybe(where+"/to", entry["to"]),
		}
		switch {
		case (l.Solve == "") == (l.Replace == ""):
			m.say("%s is either a place to solve for or an exchange to replace", where)
		case l.Solve != "" && !strings.HasPrefix(l.Solve, "/"):
			m.say("%s/solve is a place in the system file, such as /vessels/{subject}/stands_at", where)
		case l.Solve != "" && l.Toward == "":
			m.say("%s/to is missing: what the number is rounded to, such as 5 mm", where)
		}
		out = append(out, l)
	}
	return out
}

func (m *metadata) changes(x any) []review.Change {
	var out []review.Change
	for i, one := range m.list("example", x) {
		where := fmt.Sprintf("example/%d", i)
		entry := m.mapping(where, one)
		m.keys(where, entry, "at", "value")
		at := m.text(where+"/at", entry["at"])
		if at != "" && !strings.HasPrefix(at, "/") {
			m.say("%s/at is a place in the system file, such as /vessels/tank/stands_at", where)
		}
		if entry["value"] == nil {
			m.say("%s/value is missing", where)
		}
		out = append(out, review.Change{Pointer: at, Value: entry["value"]})
	}
	return out
}

// scalar is a text or a number as it is written.
func scalar(x any) (string, bool) {
	switch x := x.(type) {
	case string:
		return x, true
	case int:
		return strconv.Itoa(x), true
	case float64:
		return strconv.FormatFloat(x, 'f', -1, 64), true
	}
	return "", false
}

// oneLine is a text with every run of blanks and line breaks made one blank.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

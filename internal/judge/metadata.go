package judge

import (
	"fmt"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"
	"unicode"

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
	row   int            // of the block
	rows  map[string]int // of its keys
	wrong Problems
}

// say tells what is wrong, on the row of the last of the keys that it begins with.
func (m *metadata) say(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	row := m.row
	where, _, _ := strings.Cut(text, " ")
	for _, key := range strings.Split(strings.TrimSuffix(where, ":"), "/") {
		row = max(row, m.rows[key]) // that of a limit lies below that of all limits
	}
	m.wrong = append(m.wrong, Problem{m.file, row, text})
}

// find notes on which row each key of a METADATA block stands.
func (m *metadata) find(comments []*ast.Comment, from, to int) {
	m.rows = map[string]int{}
	for _, c := range comments {
		key, _, found := strings.Cut(strings.TrimSpace(string(c.Text)), ":")
		if row := c.Location.Row; found && row >= from && row < to && m.rows[key] == 0 {
			m.rows[key] = row
		}
	}
}

// clause is the clause that a file describes. It is of use only if no problem is told.
func (s source) clause(n names) (*review.Clause, Problems) {
	m := &metadata{names: n, file: s.file, row: s.module.Package.Location.Row}
	c := &review.Clause{Own: s.house}
	var ok bool
	if c.Chapter, c.ID, ok = s.place(); !ok {
		m.say("it stands in another package; the package of a clause %sis %s.CHAPTER.CLAUSE", ofHouse(s.house), root(s.house))
		return c, m.wrong
	}
	for _, name := range []string{c.Chapter, c.ID} {
		if !id.MatchString(name) {
			m.say("%.60q is no name; write at most 48 small letters, digits and underscores, a letter first", name)
			return &review.Clause{Own: s.house}, m.wrong
		}
	}
	if base := strings.TrimSuffix(path.Base(s.file), ".rego"); base != c.ID {
		m.say("clause %s stands in another file; a clause stands in a file of the same name: %s.rego", c.ID, c.ID)
	}
	if len(s.module.Annotations) != 1 || s.module.Annotations[0].Scope != "package" {
		m.say("%d METADATA blocks, or one of another scope; write one METADATA block, with `scope: package`, above the package", len(s.module.Annotations))
		return c, m.wrong
	}
	a := s.module.Annotations[0]
	m.row = a.Location.Row
	m.find(s.module.Comments, m.row, s.module.Package.Location.Row)
	m.read(c, a)
	return c, m.wrong
}

func ofHouse(house bool) string {
	if house {
		return "of a house "
	}
	return ""
}

func (m *metadata) read(c *review.Clause, a *ast.Annotations) {
	c.Title, c.Why = oneLine(a.Title), oneLine(a.Description)
	if c.Title == "" {
		m.say("title is missing; write the clause in one sentence")
	}
	if c.Why == "" {
		m.say("description is missing; write why the clause is there")
	}
	m.keys("custom", a.Custom, "strength", "safety", "caution", "cases", "limits", "sources", "shows", "remedies", "example")
	c.Strength = review.Strength(m.oneOf("strength", a.Custom["strength"], "shall", "should", "may"))
	c.Safety = m.yes("safety", a.Custom["safety"])
	c.Caution = oneLine(m.maybe("caution", a.Custom["caution"]))
	if c.Safety && c.Caution == "" {
		m.say("caution is missing; a safety clause says what to mind at the work itself")
	}
	c.Cases = known(m, "cases", a.Custom["cases"], "case", m.names.cases)
	if len(c.Cases) == 0 {
		m.say("cases is missing; write the states that the clause is about, such as [always] or [run_worst]")
	}
	c.Limits = m.limits(a.Custom["limits"])
	c.Sources = m.sources(a.Custom["sources"])
	c.Shows = known(m, "shows", a.Custom["shows"], "quantity", m.names.quantities)
	c.Levers = m.levers(a.Custom["remedies"])
	c.Example = m.changes(a.Custom["example"])
	m.plain("title", c.Title)
	m.plain("description", c.Why)
	m.plain("caution", c.Caution)
	for i, s := range c.Sources {
		m.plain(fmt.Sprintf("sources/%d", i), s.Text)
	}
}

// mostWritten is how many letters a text of a clause may have. The longest of ours has 2600.
const mostWritten = 8000

// plain wants a text that can be printed as it is, and that somebody will read.
func (m *metadata) plain(where, text string) {
	if strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }) {
		m.say("%s holds a character that cannot be printed; write it in plain letters", where)
	}
	if len(text) > mostWritten {
		m.say("%s has %d bytes; write at most %d", where, len(text), mostWritten)
	}
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
			m.say("%s has no bound; it needs least, most or both", where)
		case l.Least != nil && l.Most != nil && *l.Least > *l.Most:
			m.say("%s: least is more than most; write bounds between which there is room", where)
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
		m.say("sources is missing; write where the clause comes from, or without one, {grade: project judgement, text: why}")
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
			m.say("%s names both or neither; it is either a place to solve for or an exchange to replace", where)
		case l.Solve != "" && !strings.HasPrefix(l.Solve, "/"):
			m.say("%s/solve is no pointer; it is a place in the system file, such as /vessels/{subject}/stands_at", where)
		case l.Solve != "" && l.Toward == "":
			m.say("%s/to is missing; write what the number is rounded to, such as 5 mm", where)
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
			m.say("%s/at is no pointer; it is a place in the system file, such as /vessels/tank/stands_at", where)
		}
		if entry["value"] == nil {
			m.say("%s/value is missing; write what stands there", where)
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

package marking

import (
	"regexp"
	"slices"
	"sort"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Counter counts a class as its submissions come, and keeps of each no more than is needed for that.
type Counter struct {
	guide    *Guide
	marked   []*Marked
	clauses  map[string]*ClauseCount
	missing  map[string]int
	inputs   []held
	starter  *system.Document // what all began from; nil without
	starting map[string]bool  // its inputs
}

// NewCounter begins a class. The starter may be nil.
func NewCounter(g *Guide, starter *system.Document) *Counter {
	c := &Counter{guide: g, clauses: map[string]*ClauseCount{}, missing: map[string]int{}, starting: map[string]bool{}}
	if c.starter = starter; starter != nil {
		for _, in := range inputsOf(starter) {
			c.starting[in.same] = true
		}
	}
	return c
}

// Add counts a submission and lets go of what was worked out for it.
func (c *Counter) Add(m *Marked) {
	c.marked = append(c.marked, m)
	if m.Review != nil {
		c.countClauses(m)
		c.countMissing(m)
		c.hold(m)
	}
	m.release()
}

// release lets go of the workings, which nothing that is said of a whole class needs.
func (m *Marked) release() {
	m.Review = nil
	for i := range m.Lines {
		if w := m.Lines[i].Worked; w != nil {
			w.Node = nil
			for i := range w.From {
				w.From[i].Node = nil
			}
		}
	}
	for i := range m.Gains {
		m.Gains[i].Finding, m.Gains[i].Remedy = nil, nil
	}
	for i := range m.Caps {
		for k, j := range m.Caps[i].Among {
			bare := *j
			bare.Node = nil
			m.Caps[i].Among[k] = &bare
		}
	}
}

// Class is the class so far.
func (c *Counter) Class(moderation string, changes []Moderation) *Class {
	out := &Class{Guide: c.guide, Marked: c.marked, Moderate: moderation}
	var totals []float64
	var marked []*Marked // without those that dryfit itself failed at
	for _, m := range c.marked {
		if m.Fault == "" {
			marked, totals = append(marked, m), append(totals, m.Total)
		}
	}
	out.Totals = SpreadOf(totals)
	for i, item := range c.guide.Items {
		one := ItemSpread{Item: item}
		var marks []float64
		for _, m := range marked {
			x := m.Lines[i].Marks
			marks = append(marks, x)
			if x >= item.Marks {
				one.Full++
			}
			if x == 0 {
				one.None++
			}
		}
		one.Spread = SpreadOf(marks)
		out.Items = append(out.Items, one)
	}
	for _, change := range changes {
		if !slices.ContainsFunc(c.marked, func(m *Marked) bool { return m.isNamed(change.Submission) }) {
			out.Unfit = append(out.Unfit, change)
		}
	}
	out.Clauses = c.leastMet()
	out.Slips = c.slips()
	out.Missing = c.mostMissing()
	out.Pairs = c.pairs()
	return out
}

// SpreadOf is how some marks lie.
func SpreadOf(marks []float64) Spread {
	s := Spread{N: len(marks)}
	if s.N == 0 {
		return s
	}
	x := slices.Clone(marks)
	sort.Float64s(x)
	sum := 0.0
	for _, one := range x {
		sum += one
	}
	half := (s.N + 1) / 2 // the median belongs to both halves
	s.Least, s.Greatest, s.Mean = x[0], x[s.N-1], quantity.Rounded(sum/float64(s.N))
	s.Lower, s.Median, s.Upper = median(x[:half]), median(x), median(x[s.N-half:])
	return s
}

// median is the middle of sorted numbers.
func median(x []float64) float64 {
	n := len(x)
	if n%2 == 1 {
		return x[n/2]
	}
	return (x[n/2-1] + x[n/2]) / 2
}

// countClauses counts the verdicts of each clause, by the worst of its judgements.
func (c *Counter) countClauses(m *Marked) {
	k := newMarker(c.guide, m.Review)
	for _, list := range k.verdicts {
		clause := list[0].Clause
		one := c.clauses[clause.ID]
		if one == nil {
			one = &ClauseCount{Clause: clause}
			c.clauses[clause.ID] = one
		}
		one.Applies++
		switch k.verdictOf(clause.ID) {
		case review.Met:
			one.Met++
		case review.NotMet:
			one.NotMet++
		default:
			one.Undetermined++
		}
	}
}

// leastMet is the clauses that some did not meet, those that the smallest share has met first.
func (c *Counter) leastMet() []ClauseCount {
	var out []ClauseCount
	for _, one := range c.clauses {
		if one.Met < one.Applies {
			out = append(out, *one)
		}
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if x, y := a.Met*b.Applies, b.Met*a.Applies; x != y {
			return x < y
		}
		if a.Applies != b.Applies {
			return a.Applies > b.Applies
		}
		return a.Clause.ID < b.Clause.ID
	})
	return out
}

// slips counts the slips that were named. Where two explain a number both count.
func (c *Counter) slips() []SlipCount {
	var out []SlipCount
	for _, name := range SlipNames {
		one := SlipCount{Name: name}
		for _, m := range c.marked {
			for _, line := range m.Lines {
				if line.Worked == nil || !slices.ContainsFunc(line.Worked.Slips, func(s Slip) bool { return s.Name == name }) {
					continue
				}
				one.Count++
				if !slices.Contains(one.Items, line.Item) {
					one.Items = append(one.Items, line.Item)
				}
			}
		}
		if one.Count > 0 {
			out = append(out, one)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Count > out[j].Count })
	return out
}

// countMissing counts the inputs for want of which something is undetermined, whatever the ids of those who lack them.
func (c *Counter) countMissing(m *Marked) {
	seen := map[string]bool{}
	for _, pointer := range missingIn(m.Review.Judgements) {
		key := system.Dotted(general(pointer))
		if !seen[key] {
			seen[key] = true
			c.missing[key]++
		}
	}
}

func (c *Counter) mostMissing() []MissingCount {
	var out []MissingCount
	for key, n := range c.missing {
		out = append(out, MissingCount{key, n})
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.Count != b.Count {
			return a.Count > b.Count
		}
		return a.Key < b.Key
	})
	return out
}

var (
	ofAuthor = regexp.MustCompile(`^/(vessels|lines|pumps|pipes|stands)/[^/]+`)
	numbered = regexp.MustCompile(`/[0-9]+(/|$)`)
)

// general is a pointer with `*` for the ids that an author chooses, and for places in lists.
func general(pointer string) string {
	pointer = ofAuthor.ReplaceAllString(pointer, "/$1/*")
	return numbered.ReplaceAllString(pointer, "/*$1")
}

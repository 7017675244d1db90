package report

import (
	"bytes"
	"encoding/json"
	"io"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// What can become of a submission.
const (
	standsMarked = "marked"
	standsInPart = "marked in part"
	standsUnread = "not read"
	standsFailed = "dryfit failed"
)

// MarksJSON writes the marks of a class for programs: how they lie, and of every submission each
// item with its reasons. Numbers are in SI units; the schema is schema/marks.schema.json.
func MarksJSON(w io.Writer, c *marking.Class, stamp Stamp) error {
	line, err := harmlessJSON(marksRecordOf(c, stamp))
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, line, "", "  "); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err = w.Write(b.Bytes())
	return err
}

func marksRecordOf(c *marking.Class, stamp Stamp) marksRecord {
	g := c.Guide
	out := marksRecord{
		Form: 1, Version: stamp.Version, Book: stamp.Book, House: stamp.House, Units: stamp.Units, AsOf: stamp.AsOf, Files: classHash(c), Moderation: c.Moderate,
		Guide:  guideRecord{g.Name, stamp.Guide, quantity.Rounded(g.Total), quantity.Rounded(bonusOf(g))},
		Totals: marksSpreadOf(c.Totals), Items: []itemRecord{}, Clauses: []clauseCount{}, Slips: []slipCount{}, Missing: []missingCount{},
		Submissions: []markedRecord{}, Pairs: []alikeRecord{}, Unfit: []handRecord{},
	}
	for _, s := range c.Items {
		out.Items = append(out.Items, itemRecord{s.Item.ID, s.Item.Title, quantity.Rounded(s.Item.Marks), s.Item.Bonus, marksSpreadOf(s.Spread), s.Full, s.None})
	}
	for _, n := range c.Clauses {
		out.Clauses = append(out.Clauses, clauseCount{n.Clause.ID, n.Clause.Title, n.Applies, n.Met, n.NotMet, n.Undetermined})
	}
	for _, s := range c.Slips {
		one := slipCount{Name: s.Name, Count: s.Count, Items: []string{}}
		for _, item := range s.Items {
			one.Items = append(one.Items, item.ID)
		}
		out.Slips = append(out.Slips, one)
	}
	for _, m := range c.Missing {
		out.Missing = append(out.Missing, missingCount(m))
	}
	for _, m := range c.Marked {
		out.Submissions = append(out.Submissions, markedRecordOf(m))
	}
	for _, p := range c.Pairs {
		one := alikeRecord{A: p.A.Number, B: p.B.Number, Agrees: []agreeRecord{}}
		for _, a := range p.Agrees {
			one.Agrees = append(one.Agrees, agreeRecord{a.Key, a.Text, a.At.Line, a.Bt.Line, a.Others})
		}
		out.Pairs = append(out.Pairs, one)
	}
	for _, u := range c.Unfit {
		out.Unfit = append(out.Unfit, *handRecordOf(&u))
	}
	return out
}

func marksSpreadOf(s marking.Spread) marksSpread {
	r := quantity.Rounded
	return marksSpread{s.N, r(s.Mean), r(s.Least), r(s.Lower), r(s.Median), r(s.Upper), r(s.Greatest)}
}

// markedRecordOf is one submission. Where dryfit itself failed it has no marks.
func markedRecordOf(m *marking.Marked) markedRecord {
	out := markedRecord{Number: m.Number, Name: m.Name, Hash: m.Hash, Standing: standsMarked, LeftOut: m.LeftOut}
	for _, p := range m.Problems {
		out.Problems = append(out.Problems, problemRecord{place{p.Line, p.Column, p.Pointer}, p.Found, p.Write})
	}
	switch {
	case m.Fault != "":
		out.Standing, out.Why = standsFailed, m.Fault
		return out
	case unjudged(m):
		out.Standing, out.Why = standsUnread, m.Unread
	case inPart(m):
		out.Standing = standsInPart
	}
	out.NoGains, out.Departs = m.NoGains, m.Departs
	out.Total, out.Sum, out.Was, out.Changed = roundedLimit(&m.Total), roundedLimit(&m.Sum), roundedLimit(m.Was), handRecordOf(m.Changed)
	for _, c := range m.Caps {
		one := cappedRecord{Cap: c.Cap.ID, Most: quantity.Rounded(c.Cap.Most), Why: c.Cap.Why, Open: []openRecord{}}
		for _, j := range c.Among {
			one.Open = append(one.Open, openRecord{j.Clause.ID, j.Subject, string(j.Verdict)})
		}
		out.Caps = append(out.Caps, one)
	}
	for _, l := range m.Lines {
		out.Lines = append(out.Lines, lineRecord{
			Item: l.Item.ID, Marks: quantity.Rounded(l.Marks), Of: quantity.Rounded(l.Item.Marks), Reasons: l.Reasons, Lost: l.Lost,
			Was: roundedLimit(l.Was), Changed: handRecordOf(l.Changed), Worked: statesRecordOf(l),
		})
	}
	for _, g := range m.Gains {
		one := gainRecord{Marks: quantity.Rounded(g.Marks), UpTo: g.UpTo, After: g.After, Do: g.Do}
		if g.Item != nil {
			one.Item = g.Item.ID
		}
		out.Gains = append(out.Gains, one)
	}
	return out
}

// statesRecordOf is a stated value beside the right one; nil where the item is about none.
func statesRecordOf(l marking.Line) *statesRecord {
	k, task := l.Worked, (*marking.StatedRight)(nil)
	if k != nil {
		task, _ = l.Item.Task.(*marking.StatedRight)
	}
	if task == nil {
		return nil
	}
	value := func(x *float64) *valueRecord {
		if x == nil {
			return nil
		}
		return recorder{}.value(task.Kind, working.Exactly(*x))
	}
	out := &statesRecord{
		Text: k.Text, Working: k.Working, Line: k.Place.Line, Address: k.Standing, Value: value(k.X), NoUnit: k.NoUnit, BadUnit: k.BadUnit,
		Right: value(k.Right), Carried: value(k.Carried), Band: k.Band,
	}
	for _, u := range k.From {
		out.From = append(out.From, fromRecord{u.Address, u.Text})
	}
	for _, s := range k.Slips {
		out.Slips = append(out.Slips, slipRecord{s.Name, s.Words, value(&s.X)})
	}
	return out
}

func handRecordOf(c *marking.Moderation) *handRecord {
	if c == nil {
		return nil
	}
	return &handRecord{c.Submission, c.Item, quantity.Rounded(c.Marks), c.Reason, c.By, c.On, c.Stale}
}

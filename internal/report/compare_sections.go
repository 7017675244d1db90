package report

import (
	"strconv"
	"strings"

	"dryfit/internal/compare"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// moveTable is one table of a comparison.
type moveTable struct {
	title string
	rows  []moveRow
	more  int    // rows that are left out
	after string // a sentence below it
}

// moveTables is the tables of a comparison: what was changed first, then what came of it.
func moveTables(c *compare.Comparison, o Comparing) []moveTable {
	w := worded{o.Look.Units}
	var out []moveTable
	add := func(title string, most int, after string, rows []moveRow) {
		if len(rows) == 0 && after == "" {
			return
		}
		shown := min(len(rows), o.most(most))
		out = append(out, moveTable{title, rows[:shown], len(rows) - shown, after})
	}
	add("CHANGED IN THE FILE", mostMoved, "", rowsOf(c.Inputs, inputRow))
	byDirection := map[compare.Direction][]moveRow{}
	quiet := map[bool]int{}
	for _, j := range c.Judged {
		if j.Quiet() {
			quiet[j.Now != nil]++
			continue
		}
		byDirection[j.Direction] = append(byDirection[j.Direction], judgedRow(j, o.Look.Units))
	}
	add("WORSE", mostWorse, "", byDirection[compare.Worse])
	add("BETTER", mostMoved, "", byDirection[compare.Better])
	add("JUDGED OTHERWISE", mostMoved, quietWords(quiet[true], quiet[false]), byDirection[compare.Other])
	add("MOVED, AND NOT JUDGED", mostMoved, "", rowsOf(c.Quantities, func(q compare.Quantity) moveRow { return quantityRow(q, o.Look.Units) }))
	add("PARTS", mostMoved, "", rowsOf(c.Parts, w.part))
	add("CUTS", mostMoved, "", rowsOf(c.Cuts, w.cut))
	add("HOLES", mostMoved, "", rowsOf(c.Holes, w.hole))
	add("JOINTS", mostMoved, "", rowsOf(c.Joints, w.joint))
	add("COST", mostMoved, strings.Join(costWords(*c), " "), nil)
	var leave []string
	for _, p := range c.Permits {
		leave = append(leave, permitChange(p))
	}
	add("LEAVE TO DIFFER", mostMoved, strings.Join(leave, " "), nil)
	return out
}

// openTable is what stands open in a new file.
func openTable(c Compared, o Comparing) moveTable {
	rows := rowsOf(c.open(), func(j compare.Judged) moveRow { return judgedRow(j, o.Look.Units) })
	shown := min(len(rows), o.most(mostWorse))
	return moveTable{title: "OPEN IN IT", rows: rows[:shown], more: len(rows) - shown}
}

func rowsOf[T any](list []T, row func(T) moveRow) []moveRow {
	out := make([]moveRow, len(list))
	for i, one := range list {
		out[i] = row(one)
	}
	return out
}

// quietWords says how many judgements only came or went with what they judge.
func quietWords(came, gone int) string {
	var out []string
	for _, one := range []struct {
		n    int
		word string
	}{{came, "new and met"}, {gone, "gone with what was judged, and none of them was against it"}} {
		switch {
		case one.n == 1:
			out = append(out, "one judgement is "+strings.ReplaceAll(one.word, "none of them was", "was not"))
		case one.n > 1:
			out = append(out, counted(one.n)+" judgements are "+one.word)
		}
	}
	return sentence(capital(strings.Join(out, "; ")))
}

// moreWords says how many rows are left out.
func (t moveTable) moreWords() string {
	if t.more == 0 {
		return ""
	}
	return "and " + strconv.Itoa(t.more) + " more; --all shows them"
}

// comparedSentence is what a comparison comes to, in one or two sentences.
func comparedSentence(c *compare.Comparison) string {
	if c.Nothing() {
		return "Nothing that is worked out has moved."
	}
	counts := map[compare.Direction][2]int{}
	leave := 0
	for _, j := range c.Judged {
		n := counts[j.Direction]
		switch {
		case j.Quiet():
			continue
		case j.Direction == compare.Worse && j.Leave != nil:
			leave++
			continue
		case j.Verdict():
			n[0]++
		default:
			n[1]++
		}
		counts[j.Direction] = n
	}
	say := func(n [2]int) string {
		var out []string
		for i, words := range [][2]string{{"verdict", "verdicts"}, {"margin", "margins"}} {
			if n[i] > 0 {
				out = append(out, counted(n[i])+" "+words[min(n[i]-1, 1)])
			}
		}
		return series(out, "and")
	}
	worse, better := say(counts[compare.Worse]), say(counts[compare.Better])
	text := "Nothing got worse"
	if worse != "" {
		text = "Worse: " + worse
	}
	if better != "" {
		text += "; better: " + better
	}
	text += "."
	if leave > 0 {
		text += " For " + counted(leave) + " more there is leave to differ."
	}
	return text
}

// remedyLine is one thing to do about what got worse.
type remedyLine struct{ clause, subject, do string }

// remedyLines is what to do about what got worse, in the order in which to do it.
func remedyLines(c Compared, o Comparing) []remedyLine {
	var out []remedyLine
	for _, f := range c.offered() {
		out = append(out, remedyLine{f.Clause.ID, subjectWords(f.Subject), putRight(f, o.Look.Units)})
	}
	return out
}

// putRight is the first thing to do about a finding.
func putRight(f *review.Finding, in quantity.System) string {
	do := "no change of one value was found that meets it; `dryfit clauses " + f.Clause.ID + "` says what it asks for"
	g := gapsAlone(f)
	switch {
	case len(f.Remedies) > 0:
		do = remedySaid(f.Remedies[0], in)
	case len(f.Missing) > 0:
		do = strings.Join(append(g.asks(), g.reasons...), "; ")
	}
	return sentence(capital(do))
}

// unshownRemedies says how many findings have their remedies elsewhere.
func unshownRemedies(c Compared) string {
	more := len(c.Comparison.Findings()) - len(c.offered())
	if more == 0 {
		return ""
	}
	return "and " + strconv.Itoa(more) + " more; `dryfit review` has their remedies"
}

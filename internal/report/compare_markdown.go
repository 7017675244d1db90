package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/internal/compare"
)

// mostComparison is how many bytes a comparison has as a comment: code hosts take 65 535
// characters, and write some of their own around it.
const mostComparison = 60_000

// CompareMarkdown writes comparisons as a comment on a request to merge: a sentence, one
// table of was and now, and what to do about what got worse. What does not fit is counted.
func CompareMarkdown(w io.Writer, list []Compared, o Comparing) error {
	c := comment{most: mostComparison}
	c.put("<!-- dryfit compare -->\n\n" + commented(wholeSentence(list)) + "\n")
	many := len(list) > 1
	var rows, todo []string
	for _, one := range list {
		rows = append(rows, comparedRows(one, o, many)...)
		if one.Comparison == nil {
			continue
		}
		for _, r := range remedyLines(one, o) {
			where := r.clause + ", " + r.subject
			if many {
				where = one.Path + ": " + where
			}
			todo = append(todo, "- **"+commented(where)+"** "+commented(r.do)+"\n")
		}
		if more := unshownRemedies(one); more != "" {
			todo = append(todo, "- "+commented(more)+"\n")
		}
	}
	if len(rows) > 0 {
		head, under := "\n| what | was | now | moved by | which is |\n", "| --- | --- | --- | --- | --- |\n"
		if many {
			head, under = "\n| file | what | was | now | moved by | which is |\n", "| --- "+under
		}
		c.put(head + under)
		c.lines(rows, "rows", c.most*3/4)
	}
	if len(todo) > 0 {
		c.put("\nTo put right what got worse:\n\n")
		c.lines(todo, "remedies", c.most-500)
	}
	c.house(list, o)
	c.unread(list)
	_, err := io.WriteString(w, c.String())
	return err
}

// comment is text that grows up to a bound.
type comment struct {
	strings.Builder
	most int
}

func (c *comment) put(text string) { c.WriteString(text) }

// lines puts lines as long as they stay within a number of bytes, and counts the rest.
func (c *comment) lines(list []string, name string, most int) {
	for i, l := range list {
		if c.Len()+len(l) > most-100 {
			c.put(fmt.Sprintf("\n%d more %s do not fit here; `dryfit compare` shows them.\n", len(list)-i, name))
			return
		}
		c.put(l)
	}
}

// house says by whose rules the sides were judged; of several files each thing once.
func (c *comment) house(list []Compared, o Comparing) {
	var out []string
	seen := map[string]bool{}
	for _, one := range list {
		for _, text := range comparedHouse(one, o.Look.Units) {
			if !seen[text] {
				seen[text] = true
				out = append(out, "- "+commented(text)+"\n")
			}
		}
	}
	if len(out) > 0 {
		c.put("\nHouse rules:\n\n")
		c.lines(out, "changes of the house", c.most-500)
	}
}

// unread names the versions that cannot be read.
func (c *comment) unread(list []Compared) {
	var out []string
	for _, one := range list {
		for _, v := range one.shownVersions() {
			switch {
			case v.Unread != "":
				out = append(out, "- "+commented(clip(v.Name+" cannot be read: "+v.Unread, 300))+"\n")
			case len(v.Problems) > 0:
				p := v.Problems[0]
				out = append(out, "- "+commented(clip(v.Name+" cannot be reviewed yet: "+placeOf(p)+": "+p.Found+": "+p.Write, 500))+"\n")
			}
		}
	}
	if len(out) > 0 {
		c.put("\nNot read:\n\n")
		c.lines(out, "files", c.most)
	}
}

// comparedRows is what stands open in a new file; else what got worse, then what got better, then
// what was changed in the file.
func comparedRows(c Compared, o Comparing, many bool) []string {
	var rows []moveRow
	for _, j := range c.open() {
		rows = append(rows, judgedRow(j, o.Look.Units))
	}
	if c.Comparison != nil {
		rows = append(rows, changeRows(c, o)...)
	}
	out := make([]string, len(rows))
	for i, r := range rows {
		cells := []string{r.what, r.was, r.now, r.by, string(r.direction)}
		if r.verdict != "" {
			cells[0] += " (" + r.verdict + ": " + r.note + ")"
		}
		if many {
			cells = append([]string{c.Path}, cells...)
		}
		for k := range cells {
			cells[k] = commented(clip(cells[k], 400))
		}
		out[i] = "| " + strings.Join(cells, " | ") + " |\n"
	}
	return out
}

// changeRows is the rows of a file that is on both sides.
func changeRows(c Compared, o Comparing) []moveRow {
	var rows []moveRow
	for _, j := range c.Comparison.Judged {
		if j.Direction != compare.Other {
			rows = append(rows, judgedRow(j, o.Look.Units))
		}
	}
	rows = append(rows, rowsOf(c.Comparison.Inputs, inputRow)...)
	for _, m := range c.Comparison.Cost {
		if m.Moved() {
			rows = append(rows, moveRow{what: "cost", was: amountWords(m.Was, m.Currency), now: amountWords(m.Now, m.Currency), direction: compare.Other})
		}
	}
	for _, p := range c.Comparison.Permits {
		rows = append(rows, moveRow{what: permitChange(p), direction: compare.Other})
	}
	return rows
}

// wholeSentence is what several comparisons come to.
func wholeSentence(list []Compared) string {
	if len(list) == 1 && list[0].Comparison != nil {
		return comparedSentence(list[0].Comparison)
	}
	count := map[fate]int{}
	for _, c := range list {
		count[c.fate()]++
	}
	var out []string
	for _, f := range fates {
		if n := count[f]; n > 0 {
			out = append(out, counted(n)+" "+f.words(n))
		}
	}
	if len(out) == 0 {
		return "There is no system file on either side."
	}
	return capital("of " + counted(len(list)) + " " + map[bool]string{true: "file", false: "files"}[len(list) == 1] + ": " + series(out, "and") + ".")
}

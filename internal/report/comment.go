package report

import (
	"io"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// mostComment is how many bytes a comment has at most. The least that a code host takes in
// one is 65 536 characters.
//
// Source: GitHub, limit of the body of issues and comments, from memory; others take more.
const mostComment = 60_000

// roomOfComment is what is kept for the sentences before and after.
const roomOfComment = 4_000

// commentWriter writes a comment for a merge request: a sentence, a table of what is to be
// acted on, and the remedies. Of several files only those with something to act on, held to
// the strength that counts, are in it.
type commentWriter struct {
	w        io.Writer
	run      Run
	totals   totals
	house    houseSeen
	first    *Item // held until it is known whether more come
	rows     []commentRow
	remedies []commentRemedy
	bytes    int
	left     int
	leftFile string // the first of which something is left out
}

// commentRow is one row of the table; of one file alone its name is not shown.
type commentRow struct{ file, cells string }

// commentRemedy is what to do, with the flags and names of what it settles.
type commentRemedy struct {
	file, text string
	of         []string
}

func newCommentWriter(w io.Writer, r Run) *commentWriter { return &commentWriter{w: w, run: r} }

// Add takes the rows of one file while there is room.
func (c *commentWriter) Add(i Item) error {
	c.totals.add(i, c.run.HeldTo)
	c.house.take(i.Summary, c.run.Look.Units)
	if c.totals.files == 1 {
		c.first = &i
		return nil
	}
	if c.first != nil {
		c.take(*c.first)
		c.first = nil
	}
	c.take(i)
	return nil
}

// take takes one of several files, if there is something to act on.
func (c *commentWriter) take(i Item) {
	if i.Status(c.run.HeldTo) != review.NothingToAct {
		c.rowsOf(i)
	}
}

func (c *commentWriter) rowsOf(i Item) {
	in := c.run.Look.Units
	switch {
	case i.Fault != "":
		c.row(i.File, "", commentCells{clause: "dryfit failed", found: i.Fault})
	case i.Summary == nil && i.Unread != "":
		c.row(i.File, "", commentCells{clause: "cannot be read", found: i.Unread})
	case i.Summary == nil:
		for _, p := range i.Problems {
			c.row(i.File, commented(sentence(p.Write)), commentCells{clause: "cannot be read", found: "found " + p.Found, line: p.Line})
		}
	default:
		for _, f := range acted(i.Summary) {
			c.row(i.File, firstRemedy(f, in), commentCells{
				flagText(f.Number), verdictWords(f.Judgement) + ": ", f.Clause.ID, f.Subject,
				f.Title + ": " + foundWords(f.Judgement, in), wantedWords(f.Judgement, in), shareShown(f.Judgement, in), f.Place.Line,
			})
		}
		for _, p := range stale(i.Summary) {
			kind := p.Kind()
			if p.Place.File != i.File {
				kind += " in " + p.Place.File
			}
			c.row(i.File, "", commentCells{verdict: permitServes + ": ", clause: p.Clause, on: p.Subject, found: "the " + kind + " " + standingWords(p), line: p.Place.Line})
		}
	}
}

// commentCells is the cells of a row behind the name of the file.
type commentCells struct {
	flag, verdict, clause, on, found, wanted, share string
	line                                            int
}

var commentHeads = []string{"flag", "clause", "on", "worked out", "limit", "of limit", "file line"}

func (k commentCells) row() string {
	line := ""
	if k.line > 0 {
		line = strconv.Itoa(k.line)
	}
	cells := []string{k.flag, k.verdict + k.clause, k.on, k.found, k.wanted, k.share, line}
	for i := range cells {
		cells[i] = commented(cells[i])
	}
	return strings.Join(cells, " | ")
}

// name is the flag, clause and subject of a row, or its place.
func (k commentCells) name() string {
	if k.flag == "" {
		return "file line " + strconv.Itoa(k.line)
	}
	return k.flag + " " + k.clause + " on " + k.on
}

// row takes one row with its remedy, or counts it where there is no room for both.
func (c *commentWriter) row(file, remedy string, cells commentCells) {
	if c.left > 0 {
		c.left++
		return
	}
	row := commentRow{commented(ShownFile(file)), cells.row()}
	size := len(row.file) + len(row.cells) + 8
	if remedy != "" {
		size += len(row.file) + len(commented(cells.name())) + len(remedy) + 8
	}
	if c.bytes+size > mostComment-roomOfComment {
		c.left, c.leftFile = 1, file
		return
	}
	c.bytes += size
	c.rows = append(c.rows, row)
	if remedy == "" {
		return
	}
	for i := len(c.remedies) - 1; i >= 0 && c.remedies[i].file == row.file; i-- {
		if c.remedies[i].text == remedy {
			c.remedies[i].of = append(c.remedies[i].of, commented(cells.name()))
			return
		}
	}
	c.remedies = append(c.remedies, commentRemedy{row.file, remedy, []string{commented(cells.name())}})
}

// firstRemedy is what to do about a finding, and what to mind at the work.
func firstRemedy(f *review.Finding, in quantity.System) string {
	text := ""
	switch g := gapsAlone(f); {
	case len(f.Remedies) > 0:
		text = commented(remedySaid(f.Remedies[0], in))
	case f.Verdict == review.Undetermined:
		text = commented(sentence(strings.Join(append(g.asks(), g.reasons...), "; ")))
	}
	if text != "" && f.Clause.Safety && f.Clause.Caution != "" {
		text += " **" + marked(cautionFlag) + " CAUTION** " + commented(sentence(f.Clause.Caution))
	}
	return text
}

// commentSentence is what a single file comes to, in one sentence.
func commentSentence(i Item) string {
	name := "**" + commented(ShownFile(i.File)) + "** "
	switch {
	case i.Fault != "":
		return name + "could not be reviewed, by a fault of dryfit."
	case i.Summary == nil:
		return name + "cannot be read, so nothing is judged."
	}
	parts := strings.Split(strings.TrimSuffix(comesTo(i.Summary), "."), ". ")
	for k, p := range parts {
		parts[k] = strings.ToLower(p[:1]) + p[1:]
	}
	return name + "(" + commented(i.Summary.Name) + "): " + commented(strings.Join(parts, "; ")) + "."
}

// Close writes the comment.
func (c *commentWriter) Close() error {
	if c.totals.files == 0 {
		_, err := io.WriteString(c.w, "No system file was to be reviewed.\n")
		return err
	}
	many := c.totals.files > 1
	var b strings.Builder
	if many {
		b.WriteString(commented(c.totals.words(c.run.HeldTo)) + "\n")
	} else {
		c.rowsOf(*c.first)
		b.WriteString(commentSentence(*c.first) + "\n")
	}
	if len(c.rows) > 0 {
		heads := commentHeads
		if many {
			heads = append([]string{"file"}, heads...)
		}
		b.WriteString("\n| " + strings.Join(heads, " | ") + " |\n|" + strings.Repeat(" --- |", len(heads)) + "\n")
		for _, r := range c.rows {
			if many {
				b.WriteString("| " + r.file + " ")
			}
			b.WriteString("| " + r.cells + " |\n")
		}
	}
	for i, r := range c.remedies {
		if i == 0 {
			b.WriteString("\nRemedies:\n\n")
		}
		b.WriteString("- ")
		if many {
			b.WriteString(r.file + ", ")
		}
		b.WriteString(strings.Join(r.of, ", ") + ": " + r.text + "\n")
	}
	b.WriteString(c.houseWords(mostComment - 1000 - b.Len()))
	if c.left > 0 {
		b.WriteString("\n" + capital(counted(c.left)) + " more " + map[bool]string{true: "row is", false: "rows are"}[c.left == 1] +
			" left out here, from " + commented(ShownFile(c.leftFile)) + " on; `dryfit review FILE` shows the whole of a file.\n")
	}
	_, err := io.WriteString(c.w, b.String())
	return err
}

// houseWords is what the houses changed, in so many bytes; empty without a house.
func (c *commentWriter) houseWords(room int) string {
	if len(c.house.names) == 0 {
		return ""
	}
	out := "\nJudged by the rules of " + commented(series(c.house.names, "and")) + "."
	if failed := c.house.failed; c.totals.files > 1 && len(failed) > 0 {
		out += " " + commented(failed[0])
		if len(failed) > 1 {
			out += " So could " + counted(len(failed)-1) + " more not be."
		}
	}
	out += "\n"
	for i, change := range c.house.changes {
		if i == 0 {
			out += "\n"
		}
		next := "- " + commented(change) + "\n"
		if len(out)+len(next) > room {
			return out + "- and " + counted(len(c.house.changes)-i) + " more\n"
		}
		out += next
	}
	return out
}

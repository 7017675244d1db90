package report

import (
	"io"
	"regexp"
	"strings"
)

// SheetMarkdown writes a sheet as Markdown with tables, as code hosts show it. Its
// drawings are files of their own in a folder, named from the place of the page.
func SheetMarkdown(w io.Writer, s Sheet, folder string) error {
	var b strings.Builder
	b.WriteString("<!-- " + strings.ReplaceAll(s.Stamp.String(), "--", "- -") + " -->\n\n# " + marked(s.Title) + "\n")
	for _, one := range s.Sections {
		b.WriteString("\n" + strings.Repeat("#", one.Level) + " " + marked(one.Title) + "\n")
		for _, block := range one.Blocks {
			b.WriteString("\n")
			switch block := block.(type) {
			case Text:
				b.WriteString(marked(string(block)) + "\n")
			case Caution:
				b.WriteString("> " + markedCaution(block) + "\n")
			case Steps:
				markedSteps(&b, block)
			case Table:
				markedTable(&b, block)
			case Calculation:
				markedTable(&b, block.threeColumns())
			case Drawing:
				markedDrawing(&b, block, folder)
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func markedCaution(c Caution) string {
	return "**" + marked(cautionFlag) + " CAUTION** " + marked(c.Text) + " (" + marked(c.For) + ")"
}

func markedSteps(b *strings.Builder, steps Steps) {
	for i, s := range steps {
		number := fixed(float64(i+1), 0) + ". "
		b.WriteString(number + marked(s.Do) + "\n")
		for _, c := range s.Cautions {
			b.WriteString("\n" + strings.Repeat(" ", len(number)) + "> " + markedCaution(c) + "\n")
		}
		if len(s.Cautions) > 0 {
			b.WriteString("\n")
		}
	}
}

func markedTable(b *strings.Builder, t Table) {
	b.WriteString("*" + marked(t.Caption) + "*\n\n")
	b.WriteString("|")
	for _, c := range t.Columns {
		b.WriteString(" " + marked(c.Title()) + " |")
	}
	b.WriteString("\n|")
	for _, c := range t.Columns {
		b.WriteString(map[bool]string{true: " ---: |", false: " --- |"}[c.Number])
	}
	b.WriteString("\n")
	for _, row := range t.Rows {
		b.WriteString("|")
		for _, c := range row {
			var lines []string
			for _, l := range strings.Split(c.Words(), "\n") {
				lines = append(lines, marked(l))
			}
			b.WriteString(" " + strings.Join(lines, "<br>") + " |")
		}
		b.WriteString("\n")
	}
}

func markedDrawing(b *strings.Builder, d Drawing, folder string) {
	if d.SVG == "" {
		b.WriteString("*" + marked(d.Title) + ": not drawn. " + marked(sentence(capital(d.Why))) + "*\n")
		return
	}
	b.WriteString("![" + marked(d.Title) + "](<" + folder + "/" + d.Name + ".svg>)\n\n*" + marked(d.Title) + "*\n")
	for _, note := range d.Notes {
		b.WriteString("\n" + marked(note) + "\n")
	}
}

// Title is the head of a column with its units.
func (c Column) Title() string {
	switch {
	case c.US != "":
		return c.Head + ", " + c.Unit + " (" + c.US + ")"
	case c.Unit != "":
		return c.Head + ", " + c.Unit
	}
	return c.Head
}

// Words is a cell with its number in US units in brackets.
func (c Cell) Words() string {
	if c.US != "" {
		return c.Text + " (" + c.US + ")"
	}
	return c.Text
}

// threeColumns is a calculation as reference, calculation and result, with line ends in the cells.
func (c Calculation) threeColumns() Table {
	t := Table{Name: c.Name, Caption: c.Caption, Columns: []Column{{Head: "reference"}, {Head: "calculation"}, {Head: "result"}}}
	for _, r := range c.Rows {
		var reference []string
		reference = append(reference, nonEmpty(r.Reference)...)
		result := nonEmpty(r.Result)
		for _, h := range r.Held {
			reference = append(reference, h.Clause)
			result = append(result, h.Words())
		}
		var with string
		if r.With != "" {
			with = "with " + r.With
		}
		t.Rows = append(t.Rows, cells(strings.Join(reference, "\n"), strings.Join(nonEmpty([]string{r.Title, r.Formula, with}), "\n"), strings.Join(result, "\n")))
	}
	return t
}

// Words is a result beside a limit in a line: "/1\ at most 60 deg; of limit 1.50; not met".
func (h Held) Words() string {
	share := h.Share
	switch {
	case strings.HasSuffix(share, "left") || strings.HasSuffix(share, "short") || share == "":
	default:
		share = "of limit " + share
	}
	return strings.Join(nonEmpty([]string{strings.TrimSpace(h.Flag + " " + h.Limit), share, h.Verdict}), "; ")
}

// What means something in Markdown, or leads somewhere.
var (
	markup = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "|", `\|`, "~", `\~`, "#", `\#`, "$", `\$`, "!", `\!`, "@", "&#64;", "://", "&#58;//")
	begins = regexp.MustCompile(`^([-+=]|[0-9]+[.)]( |$))`)
	web    = regexp.MustCompile(`(?i)\b(www|mailto|xmpp)([.:])`)
)

// marked is a text of which Markdown makes nothing but that text.
func marked(text string) string {
	out := markup.Replace(safe(text))
	out = web.ReplaceAllStringFunc(out, func(found string) string {
		last := len(found) - 1
		return found[:last] + map[byte]string{'.': "&#46;", ':': "&#58;"}[found[last]]
	})
	if at := begins.FindString(out); at != "" {
		last := len(strings.TrimRight(at, " ")) - 1
		out = at[:last] + `\` + out[last:]
	}
	return out
}

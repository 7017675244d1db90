package report

import (
	"io"
	"strings"
)

// BookMarkdown writes a book as Markdown with tables, as code hosts show it. What links lead to
// is an anchor in the text, since every renderer makes other ids of headings.
func BookMarkdown(w io.Writer, b Book) error {
	var out strings.Builder
	out.WriteString("<!-- " + strings.ReplaceAll(b.Mark(), "--", "- -") + " -->\n\n# " + marked(b.Title) + "\n\n" + marked(b.Lead) + "\n\n" + marked(b.Made()) + "\n")
	for _, p := range b.Passages {
		out.WriteString("\n" + strings.Repeat("#", p.Level) + " " + anchor(p.ID) + marked(p.Title) + "\n")
		for _, block := range p.Blocks {
			out.WriteString("\n")
			switch block := block.(type) {
			case Paragraph:
				text := block.Words.marked()
				if block.Strong {
					text = "**" + text + "**"
				}
				out.WriteString(text + "\n")
			case Rows:
				block.mark(&out)
			case Ruled:
				block.mark(&out)
			case Warning:
				out.WriteString("> **" + marked(cautionFlag) + " CAUTION** " + marked(string(block)) + "\n")
			}
		}
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// anchor is a place that links lead to, whichever program shows the page.
func anchor(id string) string { return `<a id="` + id + `"></a>` }

// marked is a text with its links, of which Markdown makes nothing else.
func (t Words) marked() string {
	var out strings.Builder
	for i, w := range t {
		text := marked(w.Text)
		if i > 0 {
			text = notFirst(w.Text)
		}
		if w.To != "" {
			text = "[" + bracketless.Replace(text) + "](#" + w.To + ")"
		}
		out.WriteString(text)
	}
	return out.String()
}

// bracketless writes brackets in the words of a link so that no renderer ends the link at them.
var bracketless = strings.NewReplacer(`\[`, "&#91;", `\]`, "&#93;")

// notFirst is a text that goes on in the middle of a line, with the blanks at its ends.
func notFirst(text string) string {
	bare := strings.TrimLeft(text, " ")
	return strings.Repeat(" ", len(text)-len(bare)) + marked(bare)
}

func (rows Rows) mark(out *strings.Builder) {
	for _, r := range rows {
		label := "- **" + Words{r.Label}.marked() + "**"
		if len(r.Lines) == 1 {
			out.WriteString(label + " " + r.Lines[0].marked() + "\n")
			continue
		}
		out.WriteString(label + "\n")
		for _, l := range r.Lines {
			out.WriteString("  - " + l.marked() + "\n")
		}
	}
}

func (t Ruled) mark(out *strings.Builder) {
	out.WriteString("*" + marked(t.Caption) + "*\n\n|")
	for _, h := range t.Heads {
		out.WriteString(" " + marked(h) + " |")
	}
	out.WriteString("\n|" + strings.Repeat(" --- |", len(t.Heads)) + "\n")
	for _, r := range t.Rows {
		out.WriteString("|")
		for i, c := range r.Cells {
			text := c.marked()
			if i == 0 && r.ID != "" {
				text = anchor(r.ID) + text
			}
			out.WriteString(" " + text + " |")
		}
		out.WriteString("\n")
	}
}

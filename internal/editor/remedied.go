package editor

import (
	"encoding/json"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

// remedied is a remedy as a change of the text: values that are set, and at the end of them one piece that others
// take the place of. It is offered only where the changed text reads as the system that was tried;
// whatever else stands in the file, its comments and its form, stays as it is.
func remedied(doc *document, r *review.Review, root *node, remedy review.Remedy) (change, bool) {
	tried, problems := r.System.Edited(remedy.Edits...)
	if len(problems) > 0 {
		return change{}, false
	}
	c := change{title: remedy.Text}
	for _, e := range remedy.Edits {
		one, ok := put(doc.text.all, root, e, tried.Document)
		if !ok {
			return change{}, false
		}
		c.edits = append(c.edits, one)
	}
	text, ok := apply(doc.text.all, c.edits)
	if !ok {
		return change{}, false
	}
	read, problems := system.Read(doc.uri, []byte(text))
	if len(problems) > 0 || !read.Document.Whole().Same(tried.Document.Whole()) {
		return change{}, false
	}
	return c, true
}

// put makes an edit of the document one of the text.
func put(all string, root *node, e system.Edit, tried *system.Document) (edit, bool) {
	path := steps(e.Pointer)
	if len(path) == 0 {
		return edit{}, false
	}
	n := root.at(path...)
	switch {
	case e.Op == system.Splice && n != nil:
		return spliced(all, n, e.Value)
	case e.Op != system.Set:
		return edit{}, false
	}
	words, ok := system.OnOneLine(e.Value)
	switch {
	case !ok || n != nil && n.form != scalar:
		return edit{}, false
	case n != nil:
		return edit{n.value, inQuotes(words, n.quote)}, true
	}
	return added(all, root, path, words, tried)
}

// added writes a new key beside others or, where the short form of a piece stands in its place, that written out.
func added(all string, root *node, path []string, words string, tried *system.Document) (edit, bool) {
	up, name := root.at(path[:len(path)-1]...), path[len(path)-1]
	switch {
	case up == nil:
		return edit{}, false
	case up.form == scalar:
		whole, ok := tried.Whole(), true
		for _, step := range path[:len(path)-1] {
			if whole, ok = under(whole, step); !ok {
				return edit{}, false
			}
		}
		return edit{up.value, whole.String()}, up.quote != '"' // JSON would need its quotes
	case up.form != mapping || len(up.below) == 0:
		return edit{}, false
	}
	last := up.below[len(up.below)-1]
	if !up.braced {
		line := strings.LastIndexByte(all[:last.name.from], '\n') + 1 // before the last key, whose value may be long
		return edit{span{line, line}, strings.Repeat(" ", last.column) + name + ": " + words + "\n"}, true
	}
	if strings.HasPrefix(all[last.name.from:], `"`) {
		name, words = inQuotes(name, '"'), inQuotes(words, '"')
	}
	return edit{span{last.value.to, last.value.to}, ", " + name + ": " + words}, !last.value.empty()
}

// spliced writes elements, a line each, in the place of one that stands on a line.
func spliced(all string, n *node, value any) (edit, bool) {
	items, _ := value.([]any)
	if !n.inList || n.up.braced || len(n.below) != 1 || len(items) == 0 {
		return edit{}, false
	}
	at := span{n.below[0].name.from, n.below[0].value.to}
	if n.braced {
		at = n.value
	}
	if n.below[0].value.empty() || strings.Contains(all[at.from:at.to], "\n") {
		return edit{}, false
	}
	var lines []string
	for _, item := range items {
		words, ok := system.OnOneLine(item)
		if !ok {
			return edit{}, false
		}
		lines = append(lines, strings.TrimSuffix(strings.TrimPrefix(words, "{"), "}"))
	}
	return edit{at, strings.Join(lines, "\n"+strings.Repeat(" ", n.column)+"- ")}, true
}

// under is what stands under a key or number.
func under(p system.Part, step string) (system.Part, bool) {
	items, is := p.Items()
	if !is {
		return p.Key(step)
	}
	for i, item := range items {
		if system.Element("", i) == "/"+step {
			return item, true
		}
	}
	return p, false
}

// inQuotes writes a scalar in the quotes in which the one before it stood.
func inQuotes(words string, quote byte) string {
	switch {
	case strings.HasPrefix(words, `"`):
		return words
	case quote == '"':
		data, _ := json.Marshal(words) // text always can be
		return string(data)
	case quote == '\'':
		return "'" + strings.ReplaceAll(words, "'", "''") + "'"
	}
	return words
}

package editor

import (
	"cmp"
	"context"
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"dryfit/internal/system"
)

// mostActions bounds what is offered at once.
const mostActions = 20

// actions is the edits that put right what is said at a stretch of the text: remedies under their own
// words, and what the reader says to write instead. Each was tried on the text as it stands.
func (s *server) actions(ctx context.Context, params json.RawMessage, doc *document) (any, error) {
	p, err := decode[actionParams](params)
	if err != nil {
		return nil, err
	}
	if len(p.Context.Only) > 0 && !slices.ContainsFunc(p.Context.Only, func(kind string) bool { return kind == "" || kind == "quickfix" }) {
		return []codeAction{}, nil
	}
	seen := s.current(ctx, doc, true)
	if seen == nil {
		return []codeAction{}, nil
	}
	at := span{doc.text.offset(p.Range.Start), doc.text.offset(p.Range.End)}
	out := []codeAction{}
	for _, m := range seen.marks {
		if ctx.Err() != nil || len(out) >= mostActions {
			break
		}
		if !m.span.meets(at) && (m.also == nil || !m.also.span.meets(at)) {
			continue
		}
		for _, c := range changes(doc, seen, m) {
			out = append(out, codeAction{
				Title: c.title, Kind: "quickfix", Diagnostics: []diagnostic{s.shown(doc, m)}, IsPreferred: c.first, Edit: s.edit(doc, c),
			})
		}
	}
	return out, nil
}

// edit is a change in the form of the protocol.
func (s *server) edit(doc *document, c change) workspaceEdit {
	var edits []textEdit
	for _, one := range c.edits {
		edits = append(edits, textEdit{doc.text.span(one.span), one.write})
	}
	if s.versioned {
		version := doc.version
		return workspaceEdit{DocumentChanges: []documentEdit{{documentID{doc.uri, &version}, edits}}}
	}
	return workspaceEdit{Changes: map[string][]textEdit{doc.uri: edits}}
}

// A change puts other words in the place of some stretches of the text.
type change struct {
	title string
	edits []edit
	first bool // the likeliest of a finding
}

// An edit puts other words in the place of one stretch.
type edit struct {
	span  span
	write string
}

// apply is the text with edits made, and whether they can be: no two of them may meet.
func apply(all string, edits []edit) (string, bool) {
	sorted := slices.SortedFunc(slices.Values(edits), func(a, b edit) int { return cmp.Compare(b.span.from, a.span.from) })
	for i, e := range sorted {
		if i > 0 && e.span.to >= sorted[i-1].span.from {
			return "", false
		}
		all = all[:e.span.from] + e.write + all[e.span.to:]
	}
	return all, true
}

// changes is the changes that put right what a mark says.
func changes(doc *document, seen *outcome, m mark) []change {
	root := scan(doc.text.all)
	var out []change
	switch {
	case m.problem != nil:
		out = mended(doc, root, *m.problem, seen.problems(doc))
	case m.finding != nil && m.finding.Permit == nil:
		for i, r := range m.finding.Remedies {
			if c, ok := remedied(doc, seen.item.Review, root, r); ok {
				c.first = i == 0
				out = append(out, c)
			}
		}
	}
	return out
}

// instead is how the reader says to write one word or value in the place of another: "the nearest key
// is `lip_at`", "write `union: {}`", "write 16 gal(US) or 16 gal(imp)".
var instead = regexp.MustCompile("^(?:the nearest [^`]+|write )(`[^`]+`(?: or `[^`]+`)*|[-+.0-9][^`,;:]*)$")

// offered is the words that the reader says to write instead.
func offered(write string) []string {
	said := instead.FindStringSubmatch(write)
	if said == nil {
		return nil
	}
	out := strings.Split(said[1], " or ")
	for i, w := range out {
		out[i] = strings.Trim(w, "` ")
	}
	return out
}

// mended is what the reader says to write instead. It is offered only where the changed text has a problem less, and
// none that it did not have.
func mended(doc *document, root *node, p system.Problem, had []system.Problem) []change {
	n, onKey := root.touched(doc.text.place(max(p.Line, 1), max(p.Column, 1)))
	words := offered(p.Write)
	if n == nil || len(words) == 0 {
		return nil
	}
	var out []change
	for _, w := range words {
		e := edit{n.value, inQuotes(w, n.quote)}
		if onKey {
			e = edit{n.name, w}
			if strings.HasPrefix(doc.text.all[n.name.from:], `"`) {
				e.write = inQuotes(w, '"')
			}
		}
		if e.span.empty() {
			continue
		}
		text, _ := apply(doc.text.all, []edit{e})
		_, after, _ := system.ReadAsFar(doc.uri, []byte(text))
		if len(after) < len(had) && within(after, had) {
			out = append(out, change{"write `" + w + "`", []edit{e}, len(words) == 1})
		}
	}
	return out
}

// within says that all of some problems are among others.
func within(some, others []system.Problem) bool {
	for _, q := range some {
		if !slices.ContainsFunc(others, func(h system.Problem) bool { return h.Pointer == q.Pointer && h.Found == q.Found }) {
			return false
		}
	}
	return true
}

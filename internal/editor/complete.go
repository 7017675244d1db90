package editor

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
)

// pen stands for the place at which is typed, while the text is scanned.
const pen = "\ue000"

// completion is what may stand at a position: keys, words, names of the file, words of the tables.
func (s *server) completion(_ context.Context, params json.RawMessage, doc *document) (any, error) {
	p, err := decode[positionParams](params)
	if err != nil {
		return nil, err
	}
	out := completionList{Items: []completionItem{}}
	at := doc.text.offset(p.Position)
	if strings.Contains(doc.text.all, pen) {
		return out, nil
	}
	root := scan(doc.text.all[:at] + pen + doc.text.all[at:])
	n, onKey := root.touched(at + 1)
	if n == nil {
		return out, nil
	}
	typed := n.value
	if onKey {
		typed = n.name
	}
	if !strings.Contains((doc.text.all[:at] + pen + doc.text.all[at:])[typed.from:typed.to], pen) {
		return out, nil
	}
	typed.to -= len(pen)
	path := n.path()
	if onKey {
		path = path[:len(path)-1]
	}
	c := completer{root: root, typed: doc.text.all[typed.from:max(typed.from, at)], path: path, sound: s.lastSound(doc), clauses: s.clauses}
	inJSON := isJSON(doc)
	alone := n.bare || !onKey && n.inList && !inBrackets(n) // a key or a value
	for i, o := range c.offers(onKey, alone, holder(n, onKey, alone)) {
		item := completionItem{
			Label: o.word, Kind: o.kind, Detail: o.detail, SortText: fmt.Sprintf("%03d", i),
			FilterText: o.word, TextEdit: textEdit{doc.text.span(typed), o.word},
		}
		if inJSON || n.quote == '"' || strings.HasPrefix(doc.text.all[typed.from:], `"`) {
			item.TextEdit.NewText = inQuotes(o.word, '"')
			item.FilterText = item.TextEdit.NewText
		}
		if o.key && !onKey {
			item.TextEdit.NewText += ": "
		}
		if o.means != "" {
			item.Documentation = &markup{"markdown", o.means}
		}
		out.Items = append(out.Items, item)
	}
	return out, nil
}

// isJSON says that keys are written in quotes.
func isJSON(doc *document) bool {
	text := strings.TrimLeft(strings.TrimPrefix(doc.text.all, "\ufeff"), " \t\r\n")
	return strings.EqualFold(filepath.Ext(doc.uri), ".json") || strings.HasPrefix(text, "{") && strings.HasPrefix(strings.TrimLeft(text[1:], " \t\r\n"), `"`)
}

// inBrackets says that an element of a list stands in brackets, where it is a value.
func inBrackets(n *node) bool { return n.up != nil && n.up.braced }

// holder is the mapping to which a key would be added.
func holder(n *node, onKey, alone bool) *node {
	switch {
	case onKey || n.bare:
		return n.up
	case alone:
		return n
	}
	return nil
}

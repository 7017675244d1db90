package judge

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// The readers of single fields. What is absent is empty; what has the wrong form
// is told and empty.

func (m *metadata) keys(where string, have map[string]any, known ...string) {
	for _, key := range slices.Sorted(maps.Keys(have)) {
		if !slices.Contains(known, key) {
			m.say("%s: %s", where, unknown("key", key, known))
		}
	}
}

func (m *metadata) mapping(where string, x any) map[string]any {
	switch x := x.(type) {
	case nil:
		return nil
	case map[string]any:
		return x
	}
	m.say("%s is no mapping; write {key: value}", where)
	return nil
}

func (m *metadata) list(where string, x any) []any {
	switch x := x.(type) {
	case nil:
		return nil
	case []any:
		return x
	}
	m.say("%s is no list; write [...]", where)
	return nil
}

func (m *metadata) maybe(where string, x any) string {
	if x == nil {
		return ""
	}
	text, ok := scalar(x)
	if !ok {
		m.say("%s is no text; write a word or a sentence", where)
	}
	return text
}

func (m *metadata) text(where string, x any) string {
	text := m.maybe(where, x)
	if x == nil || x == "" {
		m.say("%s is missing; write it", where)
	}
	return text
}

func (m *metadata) yes(where string, x any) bool {
	switch x := x.(type) {
	case nil:
		return false
	case bool:
		return x
	}
	m.say("%s is neither; %s is true or false", where, where)
	return false
}

func (m *metadata) oneOf(where string, x any, words ...string) string {
	text := m.text(where, x)
	if text != "" && !slices.Contains(words, text) {
		m.say("%s is another word; %s is one of %s", where, where, strings.Join(words, ", "))
	}
	return text
}

// known is a list of names of which each has to be a known one.
func known[V any](m *metadata, where string, x any, what string, names map[string]V) []string {
	var out []string
	for i, one := range m.list(where, x) {
		name := m.text(fmt.Sprintf("%s/%d", where, i), one)
		if _, ok := names[name]; name != "" && !ok {
			m.say("%s: %s", where, unknown(what, name, sorted(names)))
		}
		out = append(out, name)
	}
	return out
}

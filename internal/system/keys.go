package system

import (
	"fmt"
	"slices"
	"strings"
)

// unknown explains the keys of a mapping that the schema does not know, each at its own line.
func (e *explainer) unknown(holder string, rule map[string]any) {
	n := e.doc.at(holder)
	if n == nil || n.form != mapping {
		return
	}
	if rule["maxProperties"] == 1.0 && len(n.keys) > 1 {
		return // said once, as too many keys
	}
	allowed := e.keys(rule, 0)
	for i, k := range n.keys {
		if slices.Contains(allowed, k.name) || e.ps.full() {
			continue
		}
		if e.comma(holder, n, i) {
			continue
		}
		write := "the keys here are " + e.few(allowed)
		free := without(allowed, n)
		near := Nearest(k.name, free)
		if meant := alsoCalled[k.name]; slices.Contains(free, meant) {
			near = meant
		}
		switch {
		case near != "":
			write = "the nearest key is " + quoted(near)
			e.ps.broken[child(holder, near)] = true
		case pumpWord(k.name) && slices.Contains(free, "open_flow"):
			write = "a pump has a `curve`, or `shut_off` (head at no flow) and `open_flow` (flow at no head)"
		case len(allowed) == 0:
			write = "take it out"
		}
		at := Place{e.doc.File, n.keys[i].line, n.keys[i].column}
		e.ps.addAt(at, child(holder, k.name), "the key "+quoted(k.name), write)
	}
}

// comma sees a decimal comma inside braces, {hole: 63,5 mm}, which makes a key of its second half.
func (e *explainer) comma(holder string, n *node, i int) bool {
	if i == 0 || n.items[i].form != null || n.items[i-1].form != number {
		return false
	}
	second := n.keys[i].name
	if second[:min(1, len(second))] < "0" || second[:1] > "9" {
		return false
	}
	first := n.items[i-1].text
	e.ps.broken[child(holder, second)] = true
	e.ps.add(child(holder, n.keys[i-1].name), quoted(first+","+second)+": the number has a decimal comma", "write "+first+"."+second)
	return true
}

// alsoCalled are words of the trade for which the notation has another.
var alsoCalled = map[string]string{
	"elbow": "bend", "drop": "fall", "riser": "rise", "level": "across", "straight": "across", "tap": "valve",
	"non_return_valve": "check_valve", "coupling": "union", "overflow_pipe": "standpipe", "diameter": "inside",
}

// pumpWord says whether a key names head or flow. A pump has no single one of
// either: the nearest key would be a guess that changes what the pump gives.
func pumpWord(name string) bool {
	return slices.ContainsFunc(strings.Split(fold(name), "-"), func(word string) bool {
		return word == "flow" || word == "head" || word == "lift"
	})
}

// keys is the keys that a part of the schema knows for a mapping, in its order.
func (e *explainer) keys(part any, depth int) []string {
	rule := e.book.resolved(part)
	if rule == nil || depth > 10 {
		return nil
	}
	var out []string
	if properties, ok := rule["properties"].(map[string]any); ok {
		out = append(out, e.book.names(properties)...)
	}
	parts, _ := rule["allOf"].([]any)
	for _, p := range parts {
		out = append(out, e.keys(p, depth+1)...)
	}
	for _, branch := range []string{"then", "else"} {
		out = append(out, e.keys(rule[branch], depth+1)...)
	}
	return unique(out)
}

// unique is the names without those that stand before already.
func unique(names []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, name := range names {
		if !seen[name] {
			out = append(out, name)
		}
		seen[name] = true
	}
	return out
}

// fewest is the number of keys up to which all are named.
const fewest = 6

// few names keys: all of them, or of many those that the schema lists first.
func (e *explainer) few(keys []string) string {
	if len(keys) <= fewest {
		return listed(keys)
	}
	marked := make([]string, fewest)
	for i, name := range keys[:fewest] {
		marked[i] = quoted(name)
	}
	text := fmt.Sprintf("%s and %d others", strings.Join(marked, ", "), len(keys)-fewest)
	if file := e.book.file(); file != "" {
		text += "; all stand in " + file
	}
	return text
}

// without is the names that are not keys of a mapping already.
func without(names []string, n *node) []string {
	var out []string
	for _, name := range names {
		if _, there := n.find(name); !there {
			out = append(out, name)
		}
	}
	return out
}

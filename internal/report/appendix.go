package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/working"
)

// assumed lists every value that a table gave because the file is silent.
func (p *page) assumed() []line {
	if len(p.Assumed) == 0 {
		return nil
	}
	type same struct{ title, value, source string }
	var keys []same
	places := map[same][]string{}
	of := map[same]*working.Node{}
	for _, n := range p.Assumed {
		v, known := n.Value()
		value := "?"
		if known {
			value = shown(n.Kind, v.X, p.in)
			if spread := spreadShown(n.Kind, v, p.in); spread != "" {
				value += " (" + spread + ")"
			}
		}
		k := same{n.Title, value, n.Source}
		if of[k] == nil {
			of[k], keys = n, append(keys, k)
		}
		if at := p.pointerWords(n.Pointer); !slices.Contains(places[k], at) {
			places[k] = append(places[k], at)
		}
	}
	out := []line{line{}.add("ASSUMED", waterInk).add(", because the file does not say", noInk)}
	for _, k := range keys {
		head := capital(k.title) + ": " + k.value
		out = append(out, paragraph(head, noteText, bodyWidth)...)
		out = append(out, labelled("Source", sentence(reason(of[k])), noteText+2, noteText+11, bodyWidth, referenceInk)...)
		at, more := places[k], ""
		if len(at) > 3 {
			more = " and " + strconv.Itoa(len(at)-2) + " more"
			at = at[:2]
		}
		text := strings.Join(at, ", ") + more
		out = append(out, labelled("For", text, noteText+2, noteText+11, bodyWidth, noInk)...)
	}
	return out
}

// pointerWords says where in the file a value would stand: "riser, file line 108".
func (p *page) pointerWords(pointer string) string {
	group, _ := splitPointer(pointer)
	if p.System == nil || p.System.Document == nil {
		return group
	}
	return group + " " + p.placeWords(p.System.Document.Place(pointer))
}

func reason(n *working.Node) string {
	if n.Sure == "" || strings.Contains(n.Source, n.Sure) {
		return n.Source
	}
	return n.Source + " (" + n.Sure + ")"
}

// notLooked lists the keys of the file that nothing read, by the part they belong to.
func (p *page) notLooked() []line {
	if len(p.NotLooked) == 0 {
		return nil
	}
	var groups []string
	keys := map[string][]string{}
	for _, r := range p.NotLooked {
		group, key := splitPointer(r.Pointer)
		if keys[group] == nil {
			groups = append(groups, group)
		}
		if !slices.Contains(keys[group], key) {
			keys[group] = append(keys[group], key)
		}
	}
	var rows [][]string
	for _, g := range groups {
		rows = append(rows, []string{g, strings.Join(keys[g], ", ")})
	}
	head := line{}.add("STATED, NOT YET LOOKED AT", waterInk)
	return append([]line{head}, table(rows, noteText, bodyWidth, 22)...)
}

// splitPointer names the part that a pointer belongs to, and the key within it
// without the numbers of list elements.
func splitPointer(pointer string) (group, key string) {
	parts := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	group, rest := parts[0], parts[1:]
	switch group {
	case "vessels", "lines", "pumps", "pipes":
		if len(rest) > 0 {
			group, rest = rest[0], rest[1:]
		}
	}
	var names []string
	for _, name := range rest {
		if _, err := strconv.Atoi(name); err != nil && name != "pieces" {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return group, group
	}
	return group, strings.Join(names, ".")
}

// silent names the clauses that found nothing to judge in this loop.
func (p *page) silent() []line {
	if len(p.Silent) == 0 {
		return nil
	}
	var ids []string
	for _, c := range p.Silent {
		ids = append(ids, c.ID)
	}
	out := []line{line{}.add("NOTHING TO JUDGE HERE", waterInk)}
	return append(out, paragraph("Clauses that found no such part in this loop: "+strings.Join(ids, ", ")+".", noteText, bodyWidth)...)
}

package editor

import (
	"regexp"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

// An offer is one thing that may be typed.
type offer struct {
	word   string // that takes the place of what is typed
	kind   int
	detail string
	means  string
	key    bool // a colon follows
}

// begun is the number of a value whose unit is to come.
var begun = regexp.MustCompile(`^-?[0-9][0-9./]*`)

// A completer finds what may stand at a path.
type completer struct {
	root    *node
	typed   string // up to the pen
	path    []string
	sound   *review.Review // of an earlier text; nil without one
	clauses func() []*review.Clause
}

func (c *completer) offers(onKey, alone bool, holder *node) []offer {
	var out []offer
	allowed, known := system.AllowedAt(c.path)
	if !known {
		return nil
	}
	if !onKey {
		out = append(out, c.named()...)
		out = append(out, c.listed()...)
		for _, word := range allowed.Words {
			out = append(out, offer{word: word, kind: kindEnum, means: allowed.Means})
		}
		if number := begun.FindString(c.typed); number != "" && allowed.Kind != "" && allowed.Kind != quantity.Number {
			for _, unit := range allowed.Kind.Units() {
				out = append(out, offer{word: number + " " + unit, kind: kindUnit, means: allowed.Means})
			}
		}
	}
	if !onKey && !alone {
		return out
	}
	if allowed.List { // the key of a list whose elements follow
		return out
	}
	for _, key := range allowed.Keys {
		if holder != nil {
			if there := holder.step(key.Name); there != nil {
				continue
			}
		}
		means := key.Means
		if len(key.Examples) > 0 {
			means += "\n\nFor example " + code(key.Name+": "+key.Examples[0])
		}
		detail := ""
		if key.Wanted {
			detail = "wanted"
		}
		out = append(out, offer{word: key.Name, kind: kindProperty, detail: detail, means: means, key: true})
	}
	return out
}

// named is the names of the file that may stand at the path.
func (c *completer) named() []offer {
	sorts, words := system.NamedAt(c.path)
	var out []offer
	ends := len(c.path) == 3 && c.path[0] == "lines" && (c.path[2] == "from" || c.path[2] == "to")
	for _, sort := range sorts {
		things := c.root.at(sort)
		if things == nil {
			continue
		}
		for _, thing := range things.below {
			if thing.bare || thing.key == "" {
				continue
			}
			detail := strings.TrimSuffix(sort, "s")
			if role := thing.step("role"); role != nil {
				detail = role.word
			}
			if !ends || sort == "vessels" {
				out = append(out, offer{word: thing.key, kind: kindReference, detail: detail})
			}
			if ends {
				out = append(out, parts(thing, sort)...)
			}
		}
	}
	for _, word := range words {
		out = append(out, offer{word: word, kind: kindEnum})
	}
	return out
}

// parts is what a line may start or end at within a vessel or a line.
func parts(thing *node, sort string) []offer {
	var out []offer
	if sort == "vessels" {
		for _, part := range []string{"well", "launder"} {
			if thing.step(part) != nil {
				out = append(out, offer{word: thing.key + "." + part, kind: kindReference, detail: part})
			}
		}
		return out
	}
	if pieces := thing.step("pieces"); pieces != nil {
		for _, piece := range pieces.below {
			if tee := piece.step("tee"); tee != nil {
				if id := tee.step("id"); id != nil && id.word != "" {
					out = append(out, offer{word: thing.key + "." + id.word, kind: kindReference, detail: "tee"})
				}
			}
		}
	}
	return out
}

// listed is the words of the tables, and of what was worked out, that may stand at the path.
func (c *completer) listed() []offer {
	t := tables.Embedded()
	beside := func(key string) string {
		if n := c.root.at(append(append([]string{}, c.path[:len(c.path)-1]...), key)...); n != nil {
			return n.word
		}
		return ""
	}
	var words []string
	switch where := strings.Join(general(c.path), "/"); where {
	case "pipes/*/standard":
		words = t.Standards()
	case "pipes/*/class":
		words = t.Classes(beside("standard"))
	case "pipes/*/size":
		words = t.Sizes(beside("standard"), beside("class"))
	case "fish/*/species":
		var out []offer
		for _, s := range t.AllSpecies() {
			out = append(out, offer{word: s.Key, kind: kindValue, detail: s.Plain})
		}
		return out
	case "stated/*/quantity", "measured/*/quantity":
		return c.quantities()
	case "permits/*/clause", "concessions/*/clause":
		var out []offer
		for _, clause := range c.clauses() {
			out = append(out, offer{word: clause.ID, kind: kindValue, detail: string(clause.Strength), means: clause.Title})
		}
		return out
	case "permits/*/subject", "concessions/*/subject":
		words = c.subjects(beside("clause"))
	default:
		if strings.HasSuffix(where, "/fixings/grade") || strings.HasSuffix(where, "/fasteners/*/grade") {
			words = t.Grades()
		}
	}
	var out []offer
	for _, w := range words {
		out = append(out, offer{word: w, kind: kindValue})
	}
	return out
}

// general is a path with ids and numbers as stars.
func general(path []string) []string {
	out := append([]string{}, path...)
	if len(out) > 1 {
		out[1] = "*"
	}
	for i := 2; i < len(out); i++ {
		if strings.Trim(out[i], "0123456789") == "" {
			out[i] = "*"
		}
	}
	return out
}

// quantities is the addresses of what was worked out of the last text that could be read.
func (c *completer) quantities() []offer {
	if c.sound == nil {
		return nil
	}
	var out []offer
	seen := map[string]bool{}
	for _, n := range c.sound.Ledger.Nodes() {
		name := strings.ReplaceAll(n.Address.Subject, "/", ".") + "." + n.Address.Name
		if !seen[name] {
			seen[name] = true
			out = append(out, offer{word: name, kind: kindValue, detail: n.Title})
		}
	}
	return out
}

// subjects is what a clause was held against in the last text that could be read.
func (c *completer) subjects(clause string) []string {
	if c.sound == nil {
		return nil
	}
	var out []string
	seen := map[string]bool{}
	for _, j := range c.sound.Judgements {
		if j.Clause.ID == clause && !seen[j.Subject] {
			seen[j.Subject] = true
			out = append(out, j.Subject)
		}
	}
	return out
}

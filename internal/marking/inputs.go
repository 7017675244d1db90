package marking

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

// inputsGiven gives marks for the share of what is wanted that the file says.
func (k *marker) inputsGiven(line *Line, task *InputsGiven) {
	var wanted, given int
	missing := map[string]bool{}
	miss := func(pointer string) {
		if !missing[pointer] {
			missing[pointer] = true
			line.lose(system.Dotted(pointer))
		}
	}
	for _, pointer := range k.places(task.Keys) {
		wanted++
		if k.System.Document.Has(pointer) {
			given++
		} else {
			miss(pointer)
		}
	}
	if task.Undetermined {
		for _, pointer := range missingIn(k.Judgements) {
			if !stoodFor(missing, pointer) {
				wanted++
				miss(pointer)
			}
		}
	}
	k.shareGiven(line, given, wanted, "input", "missing")
}

// groundsGiven gives marks for the share of the sources and assumptions that are wanted.
func (k *marker) groundsGiven(line *Line, task *GroundsGiven) {
	var wanted, given int
	for _, pointer := range k.places(task.SourcesFor) {
		wanted++
		if hasGround(k.System.Sources(), pointer) {
			given++
		} else {
			line.lose("a source for " + system.Dotted(pointer))
		}
	}
	assumed := min(distinct(k.System.Assumptions()), task.Assumptions)
	wanted, given = wanted+task.Assumptions, given+assumed
	if short := task.Assumptions - assumed; short == 1 {
		line.lose("an assumption with its reason")
	} else if short > 1 {
		line.lose(strconv.Itoa(short) + " assumptions with their reasons")
	}
	k.shareGiven(line, given, wanted, "source or assumption", "missing")
}

// hasGround says that one of the grounds is about a place of the file, something in it, or the one thing
// that it belongs to: a source for fish.0 is one for fish.0.feed, a source for all fish is not.
func hasGround(grounds []system.Ground, pointer string) bool {
	for _, g := range grounds {
		around := within(pointer, g.Pointer) && strings.Count(g.Pointer, "/") > 1
		if said(g.Text) && (within(g.Pointer, pointer) || around) {
			return true
		}
	}
	return false
}

// distinct counts the grounds that say something, each once.
func distinct(grounds []system.Ground) int {
	seen := map[string]bool{}
	for _, g := range grounds {
		if said(g.Text) && said(g.Basis) {
			seen[g.About+"\x00"+g.Text] = true
		}
	}
	return len(seen)
}

// said says that a text has a word or a number in it.
func said(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
}

// shareGiven gives the marks for given of wanted.
func (k *marker) shareGiven(line *Line, given, wanted int, what, not string) {
	if wanted == 0 || given == wanted {
		line.Marks = line.Item.Marks
		line.say("all that is wanted is given")
		return
	}
	line.Marks = line.Item.Marks * float64(given) / float64(wanted)
	line.say(fmt.Sprintf("%d of %d wanted; %s: %s", given, wanted, not, strings.Join(short(line.Lost), ", ")))
}

// mostNamed is how many missing things are named one by one.
const mostNamed = 8

func short(list []string) []string {
	if len(list) <= mostNamed {
		return list
	}
	return append(append([]string{}, list[:mostNamed-1]...), strconv.Itoa(len(list)-mostNamed+1)+" more")
}

// stoodFor says that something is missing already of which a pointer is a part, or that is a part of it.
func stoodFor(missing map[string]bool, pointer string) bool {
	for other := range missing {
		if within(pointer, other) || within(other, pointer) {
			return true
		}
	}
	return false
}

// within says that a pointer is another one, or lies below it.
func within(pointer, other string) bool {
	return pointer == other || strings.HasPrefix(pointer, other+"/")
}

// missingIn is the pointers for want of which judgements are undetermined, each once, in their order.
func missingIn(judgements []*review.Judgement) []string {
	var out []string
	seen := map[string]bool{}
	for _, j := range judgements {
		if j.Verdict != review.Undetermined {
			continue
		}
		for _, m := range j.Missing {
			if strings.HasPrefix(m, "/") && !seen[m] {
				seen[m] = true
				out = append(out, m)
			}
		}
	}
	return out
}

// places is the pointers that some patterns of keys stand for, each once. Where the part of a
// pattern before its last key is not there, it stands for one place, where nothing is.
func (k *marker) places(patterns []string) []string {
	var out []string
	seen := map[string]bool{}
	add := func(pointer string) {
		if !seen[pointer] {
			seen[pointer] = true
			out = append(out, pointer)
		}
	}
	for _, pattern := range patterns {
		expand(k.System.Document.Whole(), "", strings.Split(pattern, "."), add)
	}
	return out
}

func expand(at system.Part, pointer string, keys []string, add func(string)) {
	if len(keys) == 0 {
		add(pointer)
		return
	}
	items, isList := at.Items()
	if keys[0] == "*" {
		for _, name := range at.Keys() {
			below, _ := at.Key(name)
			expand(below, system.Child(pointer, name), keys[1:], add)
		}
		for i, item := range items {
			expand(item, system.Element(pointer, i), keys[1:], add)
		}
		if len(at.Keys())+len(items) > 0 {
			return
		}
	}
	if i, err := strconv.Atoi(keys[0]); err == nil && isList && i >= 0 && i < len(items) {
		expand(items[i], system.Element(pointer, i), keys[1:], add)
		return
	}
	if below, ok := at.Key(keys[0]); ok {
		expand(below, system.Child(pointer, keys[0]), keys[1:], add)
		return
	}
	for _, key := range keys {
		pointer = system.Child(pointer, key)
	}
	add(pointer)
}

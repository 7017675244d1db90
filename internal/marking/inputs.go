package marking

import (
	"fmt"
	"strconv"
	"strings"

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
		for _, pointer := range k.wantedByClauses() {
			if !missing[pointer] {
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
	assumed := min(len(k.System.Assumptions()), task.Assumptions)
	wanted, given = wanted+task.Assumptions, given+assumed
	if short := task.Assumptions - assumed; short == 1 {
		line.lose("an assumption with its reason")
	} else if short > 1 {
		line.lose(strconv.Itoa(short) + " assumptions with their reasons")
	}
	k.shareGiven(line, given, wanted, "source or assumption", "missing")
}

// hasGround says that one of the grounds is about a place of the file, something in it or something around it.
func hasGround(grounds []system.Ground, pointer string) bool {
	for _, g := range grounds {
		if g.Pointer == pointer || strings.HasPrefix(g.Pointer, pointer+"/") || strings.HasPrefix(pointer, g.Pointer+"/") {
			return true
		}
	}
	return false
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

// wantedByClauses is the pointers for want of which clauses are undetermined, each once, in the order of the judgements.
func (k *marker) wantedByClauses() []string {
	return missingIn(k.Judgements)
}

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

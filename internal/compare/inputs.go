package compare

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/system"
)

// Input is one value of the file that was changed, as it is written. One that was added
// or taken out, with all that is below it, is one change.
type Input struct {
	Pointer  string // JSON pointer in the present file; in the former one if it is gone
	Was, Now string // empty where there is none
	Added    bool
	Gone     bool
}

// moves is, for the pointer of a list in the former file, where each element of it stands
// now; -1 for one that is gone. A list that is not in it stands as it did.
type moves map[string][]int

// inputs finds what was changed between two documents.
func inputs(was, now *system.Document) ([]Input, moves) {
	w := walker{moves: moves{}}
	w.walk("", "", was.Whole(), now.Whole())
	return w.found, w.moves
}

type walker struct {
	found []Input
	moves moves
}

// walk compares the parts at two pointers.
func (w *walker) walk(from, to string, was, now system.Part) {
	if was.Same(now) {
		return
	}
	before, one := was.Items()
	after, two := now.Items()
	switch {
	case one && two:
		w.list(from, to, before, after)
	case was.IsMapping() && now.IsMapping() && !otherKind(was, now):
		w.mapping(from, to, was, now)
	default:
		w.found = append(w.found, Input{Pointer: to, Was: was.String(), Now: now.String()})
	}
}

// otherKind says that two parts of one key each are not of one kind: a box and a cylinder.
func otherKind(was, now system.Part) bool {
	a, b := was.Keys(), now.Keys()
	return len(a) == 1 && len(b) == 1 && a[0] != b[0]
}

func (w *walker) mapping(from, to string, was, now system.Part) {
	for _, key := range now.Keys() {
		is, _ := now.Key(key)
		if old, there := was.Key(key); there {
			w.walk(system.Child(from, key), system.Child(to, key), old, is)
		} else {
			w.found = append(w.found, Input{Pointer: system.Child(to, key), Now: is.String(), Added: true})
		}
	}
	for _, key := range was.Keys() {
		if _, there := now.Key(key); !there {
			old, _ := was.Key(key)
			w.found = append(w.found, Input{Pointer: system.Child(from, key), Was: old.String(), Gone: true})
		}
	}
}

func (w *walker) list(from, to string, was, now []system.Part) {
	pairs := align(was, now)
	w.moves[from] = pairs
	next := 0
	add := func(until int) {
		for ; next < until; next++ {
			w.found = append(w.found, Input{Pointer: system.Element(to, next), Now: now[next].String(), Added: true})
		}
	}
	for i, j := range pairs {
		if j < 0 {
			w.found = append(w.found, Input{Pointer: system.Element(from, i), Was: was[i].String(), Gone: true})
			continue
		}
		add(j)
		w.walk(system.Element(from, i), system.Element(to, j), was[i], now[j])
		next = j + 1
	}
	add(len(now))
}

// subject is what a subject of the former file is called now; false if the piece or the
// element that it names is gone.
//
//	riser/5            piece 5 of a line, counted from 0
//	fish/0             element of a list of the file
//	metals/no-1        the same, counted from 1
func (m moves) subject(id string) (string, bool) {
	parts := strings.Split(id, "/")
	for i, part := range parts {
		digits, first := strings.CutPrefix(part, "no-")
		n, err := strconv.Atoi(digits)
		if err != nil || i == 0 {
			continue
		}
		if first {
			n--
		}
		head, below := parts[0], ""
		for _, p := range parts[:i] {
			below = system.Child(below, p)
		}
		places, moved := m[system.Child("/lines", head)+"/pieces"]
		if !moved || i != 1 {
			places, moved = m[below]
		}
		if !moved || n < 0 || n >= len(places) {
			return id, true
		}
		if places[n] < 0 {
			return id, false
		}
		now := slices.Clone(parts)
		if now[i] = strconv.Itoa(places[n]); first {
			now[i] = "no-" + strconv.Itoa(places[n]+1)
		}
		return strings.Join(now, "/"), true
	}
	return id, true
}

// key is the subject of the former file as a key among those of the present one, where no
// subject is called like one that is gone.
func (m moves) key(id string) string {
	now, there := m.subject(id)
	if !there {
		return "gone " + id
	}
	return now
}

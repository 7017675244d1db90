package system

import (
	"slices"
	"strings"
)

// names are the places outside the lines where the file names a part of itself:
// a path in which * stands for every key or element, what may be named there, and the words that may stand there too.
var names = []struct {
	path  string
	sorts []string
	words []string
}{
	{"fish/*/in", []string{"vessels"}, nil},
	{"air/stones/*/in", []string{"vessels"}, nil},
	{"backup_air/feeds/*", []string{"vessels"}, nil},
	{"top_up/into", []string{"vessels"}, nil},
	{"rain/into", []string{"vessels"}, nil},
	{"quarantine/in", []string{"vessels"}, nil},
	{"water/buffer/in", []string{"vessels"}, nil},
	{"appliances/*/in", []string{"vessels"}, nil},
	{"metals/*/in", []string{"vessels", "lines"}, nil},
	{"alarms/*/in", []string{"vessels"}, nil},
	{"alarms/*/watches", []string{"vessels"}, []string{"power", "air", "flow", "temperature", "oxygen"}},
	{"cut_outs/*/stops", []string{"pumps", "appliances"}, nil},
	{"cut_outs/*/watches", []string{"vessels"}, []string{"flow", "current", "leak"}},
	{"spares/*/for", []string{"vessels", "lines", "pumps", "appliances"}, nil},
	{"prices/*/pipe", []string{"pipes"}, nil},
	{"prices/*/of", []string{"vessels", "pumps", "stands"}, nil},
	{"vessels/*/stand", []string{"stands"}, nil},
	{"lines/*/pieces/*/tee/pipe", []string{"pipes"}, nil},
}

// inLines is the same for the names in lines, which the walk along a line resolves itself.
var inLines = []struct {
	path  string
	sorts []string
	words []string
}{
	{"lines/*/from", []string{"vessels", "lines"}, outer},
	{"lines/*/to", []string{"vessels", "lines"}, outer},
	{"lines/*/pipe", []string{"pipes"}, nil},
	{"lines/*/pieces/*/*/pipe", []string{"pipes"}, nil},
	{"lines/*/pieces/*/reducer", []string{"pipes"}, nil},
	{"lines/*/pieces/*/reducer/to", []string{"pipes"}, nil},
	{"lines/*/pieces/*/pump", []string{"pumps"}, nil},
	{"lines/*/pieces/*/through/wall_of", []string{"vessels"}, nil},
	{"lines/*/pieces/*/through/floor_of", []string{"vessels"}, nil},
	{"lines/*/pieces/*/through/lid_of", []string{"vessels"}, nil},
	{"lines/*/pieces/*/over/rim_of", []string{"vessels"}, nil},
}

// NamedAt says what a value at a path of keys and of numbers of elements may name: the
// keys of the file under which that stands, and the words that may stand there too. There are none where it
// names nothing of the file.
func NamedAt(path []string) (sorts, words []string) {
	for _, place := range slices.Concat(inLines, names) {
		if slices.EqualFunc(strings.Split(place.path, "/"), path, func(pattern, key string) bool { return pattern == "*" || pattern == key }) {
			return place.sorts, place.words
		}
	}
	return nil, nil
}

// elsewhere checks the names outside the ends and pieces of lines.
func (r referrer) elsewhere() {
	top := r.s.cursor("")
	for _, place := range names {
		candidates := slices.Clone(place.words)
		for _, sort := range place.sorts {
			top.get(sort).each(func(id string, _ cursor) { candidates = append(candidates, id) })
		}
		known := map[string]bool{}
		for _, c := range candidates {
			known[c] = true
		}
		top.all(strings.Split(place.path, "/"), func(c cursor) {
			if name := c.word(); name.given && !known[name.text] {
				r.dangling(c.pointer, name.text, strings.TrimSuffix(place.sorts[0], "s"), candidates, place.sorts...)
			}
		})
	}
	var modes []string
	top.get("modes").each(func(id string, _ cursor) { modes = append(modes, id) })
	top.all(strings.Split("lines/*/pieces/*/valve/positions", "/"), func(c cursor) {
		c.each(func(mode string, at cursor) {
			if !slices.Contains(modes, mode) {
				r.dangling(at.pointer, mode, "mode", modes)
			}
		})
	})
}

// all visits the places of a path.
func (c cursor) all(path []string, visit func(cursor)) {
	if len(path) == 0 {
		visit(c)
		return
	}
	if path[0] != "*" {
		c.get(path[0]).all(path[1:], visit)
		return
	}
	c.each(func(_ string, v cursor) { v.all(path[1:], visit) })
	c.items(func(_ int, v cursor) { v.all(path[1:], visit) })
}

// dangling reports a name that points at nothing, with the nearest that would
// do. It says nothing when a mapping in which the name may stand is refused itself.
func (r referrer) dangling(pointer, name, sort string, candidates []string, among ...string) {
	if r.ps.full() || r.ps.broken[pointer] {
		return
	}
	for _, sort := range append(among, sort+"s") {
		if r.ps.broken["/"+sort] {
			r.ps.broken[pointer] = true
			return
		}
	}
	write := "there is no " + sort + " to name: add one first"
	near := Nearest(name, candidates)
	for _, sort := range []string{"vessels", "pipes", "pumps", "lines", "stands", "appliances", "modes"} {
		if fold(near) == fold(name) && r.ps.broken[child("/"+sort, near)] {
			return // the name itself is what is wrong
		}
	}
	if near != "" {
		write = "the nearest " + sort + " is " + quoted(near)
	} else if len(candidates) == 1 {
		write = "the only " + sort + " is " + quoted(candidates[0])
	} else if len(candidates) > 0 {
		write = "write one of " + listed(candidates)
	}
	r.ps.add(pointer, "the "+sort+" "+quoted(name)+", which is not in this file", write)
}

// named is anything of the file with an id.
type named interface{ id() string }

func (v *Vessel) id() string { return v.ID }
func (p *Pipe) id() string   { return p.ID }
func (p *Pump) id() string   { return p.ID }

func ids[T named](things []T) []string {
	var out []string
	for _, t := range things {
		out = append(out, t.id())
	}
	return out
}

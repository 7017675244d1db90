package system

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// fingerprint writes what the model says of a system, whatever the order of its keys.
func fingerprint(s *System) string {
	var out []string
	for _, v := range s.Vessels {
		rim, _ := v.Rim().Value()
		out = append(out, fmt.Sprintf("vessel %s %s %s rim %.6f well %v weir %v", v.ID, v.Role.text, v.Form.Kind, rim, v.Well != nil, v.Weir != nil))
	}
	for _, p := range s.Pumps {
		out = append(out, fmt.Sprintf("pump %s %d points", p.ID, len(p.Curve)))
	}
	for _, l := range s.Lines {
		for _, p := range l.Pieces {
			from, _ := p.From.Value()
			to, _ := p.To.Value()
			length, _ := p.Length.Value()
			in, pipe := "outside", "no pipe"
			if p.In != nil {
				in = p.In.ID
			}
			if p.Pipe != nil {
				pipe = fmt.Sprintf("%s %.5f", p.Pipe.ID, p.Pipe.Inside)
			}
			out = append(out, fmt.Sprintf("piece %s/%03d %s %.6f %.6f %.6f %v %.4f %.4f %v %s %s %s",
				l.ID, p.Index, p.Kind, from, to, length, p.Fitted, p.Turn, p.Direction, p.HasDirection, in, pipe, p.Joint.text))
		}
	}
	slices.Sort(out)
	return strings.Join(out, "\n")
}

// shuffle puts the keys of every mapping into another order.
func shuffle(n *node, r *rand.Rand) {
	for _, item := range n.items {
		shuffle(item, r)
	}
	if n.form != mapping {
		return
	}
	keys, items := slices.Clone(n.keys), slices.Clone(n.items)
	for to, from := range r.Perm(len(keys)) {
		n.keys[to], n.items[to] = keys[from], items[from]
		n.byName[keys[from].name] = to
	}
}

func TestOrderOfKeysDoesNotMatter(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "everything.yaml", "common-drum.yaml"} {
		want := mustRead(t, name, systemFile(t, name))
		for seed := range uint64(20) {
			root := want.Document.root.copy()
			shuffle(root, rand.New(rand.NewPCG(seed, 1)))
			text := (&Document{root: root}).YAML()
			if got := fingerprint(mustRead(t, name, text)); got != fingerprint(want) {
				t.Fatalf("%s, seed %d: got\n%s\nwant\n%s", name, seed, got, fingerprint(want))
			}
		}
	}
}

func TestJSONReadsAsYAML(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "everything.yaml", "common-drum.yaml"} {
		want := mustRead(t, name, systemFile(t, name))
		for _, indent := range []string{"", "\t", "  "} {
			text, err := json.MarshalIndent(want.Document.Plain(), "", indent)
			if err != nil {
				t.Fatal(err)
			}
			if got := fingerprint(mustRead(t, "x.json", text)); got != fingerprint(want) {
				t.Errorf("%s with indent %q differs", name, indent)
			}
		}
	}
}

// TestWrittenOutReadsBack holds the writer of YAML against the reader.
func TestWrittenOutReadsBack(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "everything.yaml", "common-drum.yaml"} {
		want := mustRead(t, name, systemFile(t, name))
		got := mustRead(t, name, want.Document.YAML())
		a, _ := json.Marshal(want.Document.Plain())
		b, _ := json.Marshal(got.Document.Plain())
		if string(a) != string(b) {
			t.Errorf("%s: wrote\n%s", name, want.Document.YAML())
		}
	}
	for _, s := range []string{"", " a", "a ", "null", "true", "12", "1.5e3", "a: b", "a #b", "- a", "[a]", "'", "\"", "\\", "a\nb", "é", "1 1/2 in", "&a", "*a", "!a", "%a", "@a", "`a", "{", "}", "a,b", "?", "-", "~", "<<", "=", "\u2028", "\ufeff"} {
		n := &node{form: mapping}
		n.put(key{name: "x"}, &node{form: text, text: s})
		root := parse((&Document{root: n}).YAML(), newProblems(&Document{}))
		if got := root.get("x"); got == nil || got.form != text || got.text != s {
			t.Errorf("%q written as %s reads back as %+v", s, (&Document{root: n}).YAML(), got)
		}
	}
}

package system

import (
	"slices"
	"strings"
	"testing"

	"dryfit/internal/quantity"
)

func stops(s *System) []string {
	var out []string
	for _, stop := range s.Round() {
		out = append(out, stop.ID())
	}
	return out
}

// TestRound follows the water of the demo by hand, and looks at what is not reached.
func TestRound(t *testing.T) {
	s := mustRead(t, "quarry-road.yaml", systemFile(t, "quarry-road.yaml"))
	want := strings.Fields("tank solids-run settler clear-run biofilter filtered-run raft bed-return sump riser sump-overflow settler-waste draw-down settler-overflow")
	if got := stops(s); !slices.Equal(got, want) {
		t.Errorf("round the demo: %v, want %v", got, want)
	}
	// A store that nothing leads to comes last, a branch after the line that it leaves, and the first fish tank first.
	text := strings.Replace(base, "vessels:\n", "vessels:\n  store: {role: store}\n", 1)
	text = strings.Replace(text, "- across: 500 mm", "- across: 200 mm\n      - tee: {id: split, way: through, third: line}\n      - across: 300 mm", 1) +
		strings.NewReplacer("rise: fit", "fall: fit", "facing: up", "facing: down").Replace(tees[1:])
	want = strings.Fields("tank down sump up branch store")
	if got := stops(mustRead(t, "x", []byte(text))); !slices.Equal(got, want) {
		t.Errorf("round: %v, want %v", got, want)
	}
}

func TestLookUps(t *testing.T) {
	s := mustRead(t, "quarry-road.yaml", systemFile(t, "quarry-road.yaml"))
	settler := s.Vessel("settler")
	var from, into []string
	for _, l := range s.LinesFrom(settler) {
		from = append(from, l.ID)
	}
	for _, l := range s.LinesInto(settler) {
		into = append(into, l.ID)
	}
	if !slices.Equal(from, strings.Fields("clear-run settler-waste draw-down settler-overflow")) || !slices.Equal(into, []string{"solids-run"}) {
		t.Errorf("from the settler %v, into it %v", from, into)
	}
	if s.Vessel("x") != nil || s.Line("x") != nil || s.Pump("x") != nil || s.LinesFrom(nil) != nil {
		t.Error("something is found by a name that is not there")
	}
	if bends := s.Line("solids-run").Bends(); len(bends) != 4 || bends[0].ID() != "solids-run/6" {
		t.Errorf("bends of the solids line: %v", bends)
	}
	if rim, _ := settler.Rim().Value(); rim != 1.035 {
		t.Errorf("rim of the settler at %v m", rim)
	}
	if v, given := s.Number("/fish/0/mass", quantity.Mass).SI(); !given || v != 9.5 {
		t.Errorf("mass of fish: %v, %v", v, given)
	}
	if n := s.Number("/fish/0/each", quantity.Mass); n.Given() || n.Pointer() != "/fish/0/each" {
		t.Errorf("what is not given: %+v", n)
	}
	if got := s.Items("/air/stones"); !slices.Equal(got, []string{"/air/stones/0", "/air/stones/1", "/air/stones/2"}) {
		t.Errorf("stones: %v", got)
	}
	if got := s.Keys("/pipes"); !slices.Equal(got, []string{"waste-40", "clear-50", "riser-25"}) {
		t.Errorf("pipes: %v", got)
	}
	if well := NoWell(s.Vessel("tank")); well.LipAt.Given() || well.LipAt.Pointer() != "/vessels/tank/well/lip_at" {
		t.Errorf("no well: %+v", well)
	}
	if on, given := settler.Well.ComesOut.On(); !on || !given {
		t.Error("the well comes out")
	}
	if v, given := s.Water.SaltTreatment.SI(); v != 0 || !given {
		t.Error("no salt treatment is a concentration of zero")
	}
	if r := s.Water.Alkalinity; r.Low.Pointer() != "/water/alkalinity/low" || r.High.Basis() != "CaCO3" || r.Usual.Unit() != "mg/L" {
		t.Errorf("alkalinity given as a range: %+v", r)
	}
	if r := s.Water.Chloride; r.Low.Pointer() != "/water/chloride" || r.High.Unit() != "mg/L" {
		t.Errorf("chloride given once: %+v", r)
	}
}

func TestNotLooked(t *testing.T) {
	s := mustRead(t, "base.yaml", []byte(base))
	pointers := func() []string {
		var out []string
		for _, leaf := range s.NotLooked() {
			out = append(out, leaf.Pointer())
		}
		return out
	}
	// The walk has read the heights, lengths, names and facings of the lines; nothing has read these yet.
	want := strings.Fields(`/name /vessels/tank/role /vessels/tank/form/cylinder/inside
		/vessels/sump/role /vessels/sump/form/box/length /vessels/sump/form/box/width /vessels/sump/form/box/wall
		/pumps/lift/shut_off /pumps/lift/open_flow /lines/down/joints
		/lines/down/pieces/0/through/seal/hole /lines/down/pieces/2/bend
		/lines/up/pieces/3/bend`)
	got := pointers()
	for _, p := range want {
		if !slices.Contains(got, p) {
			t.Errorf("%s counts as looked at", p)
		}
	}
	for _, p := range strings.Fields("/dryfit /vessels/tank/stands_at /lines/down/from /lines/down/pipe /lines/down/pieces/0/through/at /lines/down/pieces/1/across /lines/up/pieces/1/pump /pipes/main/size") {
		if slices.Contains(got, p) {
			t.Errorf("%s counts as not looked at", p)
		}
	}
	if s.Name.Given(); !slices.Contains(pointers(), "/name") {
		t.Error("to ask whether a value is given is not to read it")
	}
	if s.Name.Value(); slices.Contains(pointers(), "/name") {
		t.Error("the name was read")
	}
	scalars := len(s.Looked()) + len(s.NotLooked()) + 1 // and the key dryfit
	if want := strings.Count(flow(s.Document.root), ":") - countMappings(s.Document.root) - countLists(s.Document.root); scalars != want {
		t.Errorf("%d scalars looked at or not, the file has %d", scalars, want)
	}
}

// countMappings and countLists count the values of keys that are no scalars.
func countMappings(n *node) int { return countForm(n, mapping) }
func countLists(n *node) int    { return countForm(n, list) }

func countForm(n *node, f form) int {
	count := 0
	for _, item := range n.items {
		if n.form == mapping && item.form == f {
			count++
		}
		count += countForm(item, f)
	}
	return count
}

// TestDistance: kitten and sitting differ by 3 (the usual example of V. I.
// Levenshtein's distance); ca and abc by 3 when a swapped pair is not touched
// again (optimal string alignment), from memory.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"ca", "abc", 3}, {"", "abc", 3}, {"abc", "", 3}, {"lip_at", "lip_ta", 1}, {"a", "a", 0}, {"stands_at", "stand_at", 1}} {
		if got := distance(c.a, c.b, 10); got != c.want {
			t.Errorf("from %q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
		if got := distance(c.b, c.a, 10); got != c.want {
			t.Errorf("from %q to %q: %d, want %d", c.b, c.a, got, c.want)
		}
		if got := distance(c.a, c.b, 1); got != min(c.want, 2) {
			t.Errorf("from %q to %q, at most 1: %d", c.a, c.b, got)
		}
	}
	for written, want := range map[string]string{"lip_att": "lip_at", "Lip-At": "lip_at", "crest": "", "insde": "inside", "xyz": ""} {
		if got := Nearest(written, []string{"lip_at", "inside", "outside", "crest_at_the_rim"}); got != want {
			t.Errorf("nearest to %q: %q, want %q", written, got, want)
		}
	}
}

package system

import (
	"slices"
	"strings"
	"testing"
)

// Whatever may name something of the file is a place that the notation knows.
func TestPlacesOfNamesAreInTheNotation(t *testing.T) {
	for _, place := range slices.Concat(inLines, names) {
		found := false
		for _, last := range []string{"across", "0"} { // a kind of piece, or an element
			path := strings.Split(place.path, "/")
			for i, step := range path {
				switch {
				case step != "*":
				case i == 4:
					path[i] = last
				case i > 0 && slices.Contains([]string{"pieces", "fish", "stones", "feeds", "metals", "alarms", "cut_outs", "spares", "prices"}, path[i-1]):
					path[i] = "0"
				default:
					path[i] = "some"
				}
			}
			_, known := AllowedAt(path)
			found = found || known
			if sorts, _ := NamedAt(path); !slices.Equal(sorts, place.sorts) {
				t.Errorf("%v names %q, wanted %q", path, sorts, place.sorts)
			}
		}
		if !found {
			t.Errorf("the notation has no place %s", place.path)
		}
	}
}

func TestAllowedAt(t *testing.T) {
	bend, ok := AllowedAt([]string{"lines", "riser", "pieces", "3", "bend"})
	if !ok || bend.Kind != "angle" || !strings.HasPrefix(bend.Means, "A sharp bend") || bend.Examples[0] != "45 deg" {
		t.Errorf("bend: %+v", bend)
	}
	if i := slices.IndexFunc(bend.Keys, func(k AllowedKey) bool { return k.Name == "angle" }); i < 0 || !bend.Keys[i].Wanted {
		t.Errorf("the keys of a bend: %+v", bend.Keys)
	}
	valve, _ := AllowedAt([]string{"lines", "riser", "pieces", "3", "valve"})
	if !slices.Contains(valve.Words, "ball") || len(valve.Keys) == 0 {
		t.Errorf("valve: %+v", valve)
	}
	rise, _ := AllowedAt([]string{"lines", "riser", "pieces", "3", "rise"})
	if !slices.Contains(rise.Words, "fit") || rise.Kind != "length" {
		t.Errorf("rise: %+v", rise)
	}
	if curve, _ := AllowedAt([]string{"pumps", "main", "curve"}); !curve.List {
		t.Errorf("curve: %+v", curve)
	}
	for _, path := range [][]string{{"vesels"}, {"vessels", "Tank"}, {"lines", "riser", "pieces", "x"}, {"name", "0"}} {
		if _, known := AllowedAt(path); known {
			t.Errorf("the notation knows %v", path)
		}
	}
}

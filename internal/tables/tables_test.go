package tables

import (
	"io/fs"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"dryfit/rules"
)

func TestLoadReadsEveryTable(t *testing.T) {
	got, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	v := reflect.ValueOf(*got)
	for i := range v.NumField() {
		if v.Field(i).Len() == 0 {
			t.Errorf("%s is empty", v.Type().Field(i).Name)
		}
	}
	if first, second := Embedded(), Embedded(); first != second {
		t.Error("the embedded tables are read more than once")
	}
}

// copyTables gives the files of the tables, to be spoilt.
func copyTables(t *testing.T) fstest.MapFS {
	t.Helper()
	names, err := fs.Glob(rules.Tables, "tables/*.csv")
	if err != nil || len(names) == 0 {
		t.Fatal("no tables", err)
	}
	files := fstest.MapFS{}
	for _, name := range names {
		data, err := rules.Tables.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[strings.TrimPrefix(name, "tables/")] = &fstest.MapFile{Data: data}
	}
	return files
}

func TestLoadRefuses(t *testing.T) {
	for _, c := range []struct{ name, file, old, new, says string }{
		{"a heading that is not the agreed one", "pipes.csv", "outside_mm,", "od_mm,", "the heading should be standard,class"},
		{"a figure that is none", "pipes.csv", ",21.34,", ",wide,", `"wide" is no figure`},
		{"an infinite figure", "pipes.csv", ",21.34,", ",Inf,", "is no figure"},
		{"a figure that is not a number", "drums.csv", ",310,", ",NaN,", "is no figure"},
		{"a negative figure", "drums.csv", ",310,", ",-310,", "is no figure"},
		{"a wall of nothing", "pipes.csv", ",3.025,", ",0,", "wall_mm should be above 0"},
		{"an empty figure", "pipes.csv", ",3.025,", ",,", "wall_mm is empty"},
		{"walls that do not add up", "pipes.csv", ",15.29,", ",15.9,", "outside less two walls"},
		{"a mean outside its limits", "pipes.csv", ",21.34,21.24,", ",21.34,21.4,", "should not fall"},
		{"the same pipe twice, written another way", "pipes.csv", "ASTM D1785,Sch 40,3/4 in", "ASTM D1785-15,Sch40,1/2 in", "the same key stands in line"},
		{"a source left out", "rubber.csv", "\"project judgement below the half of EPDM\"", "", "source is empty"},
		{"a degree of sureness of one's own", "rubber.csv", "\"project judgement\"\n", "guess\n", "sure:"},
		{"an unknown method", "fittings.csv", ",2K,800", ",4K,800", "method:"},
		{"a spread that leaves out its own value", "fittings.csv", ",0.37,1.0,", ",0.8,1.0,", "least, own and most K"},
		{"a valve that loses less as it closes", "valves.csv", "gate,25,17,17,24", "gate,25,1,1,24", "lose more at each"},
		{"a valve that does not start open", "valves.csv", "gate,100,", "gate,99,", "100 % open"},
		{"film on a clean wall", "roughness.csv", "clean,0.007,0,0.01,0,0,0", "clean,0.007,0,0.01,0,0,1", "a clean wall has no film"},
		{"poison that may be wetted", "metals.csv", ",no,yes,\"Gives off copper\"", ",yes,yes,\"Gives off copper\"", "may not be wetted"},
		{"stainless steel without its limits", "metals.csv", ",500,1000,,yes,no,\"Close", ",,,,yes,no,\"Close", "needs its pren and chloride"},
		{"a clamp of an unknown grade", "clamps.csv", "W5,316,", "W5,31b,", "no such grade"},
		{"a tapered socket without its bottom", "sockets.csv", ",21.234,", ",,", "needs entrance, bottom"},
		{"a drum without a diameter", "drums.csv", ",310,", ",,", "needs a diameter"},
		{"an assumption in a strange unit", "assumptions.csv", ",N m/rad,", ",ft,", "unit:"},
		{"a hose that cannot be", "hoses.csv", "16,15.1,", "16,15.8,", "bore should not fall"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := copyTables(t)
			was := string(files[c.file].Data)
			spoilt := strings.Replace(was, c.old, c.new, 1)
			if spoilt == was {
				t.Fatalf("%s has no %q to spoil", c.file, c.old)
			}
			files[c.file] = &fstest.MapFile{Data: []byte(spoilt)}
			_, err := load(files)
			if err == nil || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), c.file+":") {
				t.Errorf("got %v; want an error of %s that says %q", err, c.file, c.says)
			}
		})
	}
}

func TestLoadNeedsEveryFile(t *testing.T) {
	for name := range copyTables(t) {
		for _, data := range []string{"", "key\n", "a,\"b\n"} {
			files := copyTables(t)
			files[name] = &fstest.MapFile{Data: []byte(data)}
			if _, err := load(files); err == nil {
				t.Errorf("%s holding %q loads", name, data)
			}
		}
		files := copyTables(t)
		delete(files, name)
		if _, err := load(files); err == nil {
			t.Errorf("loads without %s", name)
		}
	}
}

// A source names a work, not the place of a copy or a key of somebody's notes.
func TestSourcesNameWorks(t *testing.T) {
	bad := regexp.MustCompile(`(?i)https?:|www\.|\.(com|org|net|io)\b|\[S?\d+\]|scribd|github`)
	for name, file := range copyTables(t) {
		for i, line := range strings.Split(string(file.Data), "\n") {
			if m := bad.FindString(line); m != "" {
				t.Errorf("%s:%d: %q", name, i+1, m)
			}
		}
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tolerance)
	}
}

package making

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// listed is the lists of a text.
func listed(t *testing.T, text string) Book {
	t.Helper()
	s, problems := system.Read("shed", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	Survey(s, tables.Embedded(), l)
	return Lists(s, tables.Embedded(), l)
}

// shed is one line between a tank and a sump, cemented, of one pipe, with more of the file behind it.
func shed(pipe, pieces, more string) string {
	return "dryfit: 1\nname: shed\nvessels:\n" +
		"  tank: {role: fish-tank, form: {box: {length: 2 m, width: 2 m, height: 1 m, wall: 6 mm, measured_at: 300 mm, corner_radius: 30 mm, ribs_at: []}}, stands_at: 1 m, material: PE}\n" +
		"  sump: {role: sump, form: {cylinder: {inside: 580 mm, height: 800 mm, wall: 4 mm}}, stands_at: 0 mm}\n" +
		"pipes: {pipe: " + pipe + "}\nlines:\n  run: {from: tank, to: sump, pipe: pipe, joints: cemented, pieces: [" + pieces + "]}\n" + more
}

const (
	schedule40 = "{standard: ASTM D1785, class: Sch 40, size: %s}"
	metric     = "{standard: DIN 8062, class: PN10, size: %s}"
)

// Centre to centre less both take-offs, of fittings as the trade has them.
//
// Source: rule from the US Army Engineer School's course on plumbing (centre to centre less both fitting dimensions); take-offs of
// Schedule 40 elbows from memory, within 2 mm; z lengths after ISO 264 from memory: dn/2 + 1 mm, and 0.207 dn + 1 mm.
func TestCutsBetweenTwoElbows(t *testing.T) {
	for _, c := range []struct {
		pipe, size       string
		centres, g, want float64 // mm
	}{
		{schedule40, "1/2 in", 600, 12.7, 574.6},
		{schedule40, "3/4 in", 600, 14.3, 571.4},
		{schedule40, "1 in", 600, 17.5, 565},
		{schedule40, "1-1/4 in", 600, 24.6, 550.8},
		{schedule40, "1-1/2 in", 600, 27, 546},
		{schedule40, "2 in", 600, 33.3, 533.4},
		{schedule40, "3 in", 600, 46.8, 506.4},
		{schedule40, "4 in", 600, 59.5, 481},
		{metric, "dn 25", 500, 13.5, 473},
		{metric, "dn 32", 500, 17, 466},
		{metric, "dn 50", 500, 26, 448},
		{metric, "dn 63", 500, 32.5, 435},
		{metric, "dn 110", 500, 56, 388},
	} {
		pieces := "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: 90 deg}, {across: " + fmt.Sprint(c.centres) + " mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
		b := listed(t, shed(fmt.Sprintf(c.pipe, c.size), pieces, ""))
		cut := b.Cuts[1]
		if !cut.Known {
			t.Errorf("%s: %s", c.size, cut.Why)
			continue
		}
		about(t, c.size+", take-off, mm", 1000*cut.TakeoffA.X, c.g, 0.05)
		about(t, c.size+", cut, mm", 1000*cut.Length.X, c.want, 0.1)
		if cut.Length.High-cut.Length.X > 0.0041 {
			t.Errorf("%s: two take-offs within 2 mm leave the cut within 4, not %v", c.size, cut.Length)
		}
	}
}

// Two 45s make an offset: the travel is the offset times 1.4142, less the take-offs.
//
// Source: Dibble, Elements of Plumbing, table of offset multipliers (1.41 for fittings of 45 degrees); take-off of the metric
// elbow 0.207 dn + 1 mm, ISO 264 pattern, from memory: 300 mm in dn 50 is 424.3 mm less twice 11.35 mm.
func TestOffsetOfTwo45s(t *testing.T) {
	pieces := "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: 45 deg}, {slope: {angle: 45 deg, fall: 300 mm}}, {bend: 45 deg}, " +
		"{across: 200 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
	cut := listed(t, shed(fmt.Sprintf(metric, "dn 50"), pieces, "")).Cuts[1]
	about(t, "travel, mm", 1000*cut.Centres.X, 424.3, 0.1)
	about(t, "cut, mm", 1000*cut.Length.X, 401.5, 0.2)
}

// Depth of sockets, and how much longer a piece with two tapered sockets measures while it is pushed together dry:
// at nominal diameters a dry pipe stops at two thirds of the depth.
//
// Source: ASTM D2466, table of tapered sockets, least depth C in inches; geometry of the cone with its diameters.
func TestSocketsAndDryExcess(t *testing.T) {
	for size, inches := range map[string]float64{"1/2 in": 0.688, "3/4 in": 0.719, "1 in": 0.875, "1-1/4 in": 0.938, "1-1/2 in": 1.094, "2 in": 1.156, "3 in": 1.875, "4 in": 2} {
		pieces := "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: 90 deg}, {across: 600 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
		b := listed(t, shed(fmt.Sprintf(schedule40, size), pieces, ""))
		cut := b.Cuts[1]
		about(t, size+", socket, in", cut.SocketA.X/0.0254, inches, 0.002)
		about(t, size+", two sockets dry, in", cut.Excess.X/0.0254, 2*inches/3, 0.03) // the table of pipes has 60.32 mm for 60.325
		about(t, size+", one socket dry, in", b.Cuts[0].Excess.X/0.0254, inches/3, 0.015)
		if len(cut.Marks) != 2 || math.Abs(cut.Marks[0]-cut.SocketA.X) > 1e-9 || math.Abs(cut.Length.X-cut.Marks[1]-cut.SocketB.X) > 1e-9 {
			t.Errorf("%s: marks at %v of %v", size, cut.Marks, cut.Length.X)
		}
	}
	parallel := listed(t, shed(fmt.Sprintf(metric, "dn 110"), "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}", "")).Cuts[0]
	about(t, "ISO 727-1, dn 110, mm", 1000*parallel.SocketB.X, 61, 0.05) // 0.5 dn + 6 mm, from memory
	about(t, "excess of a parallel socket", parallel.Excess.X, 0, 1e-12)
}

// An end that stays dry in a tapered socket never reaches its bottom: the length of the table does not hold there.
//
// Source: ASTM D2466, diameters of tapered sockets: a dry pipe stops part of the way.
func TestEndsThatStayDry(t *testing.T) {
	for pipe, dry := range map[string]bool{fmt.Sprintf(schedule40, "1 in"): true, fmt.Sprintf(metric, "dn 32"): false} {
		for joint, loose := range map[string]bool{"uncemented": true, "pinned": true, "cemented": false} {
			pieces := "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: {angle: 90 deg, joint: " + joint + "}}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
			if cut := listed(t, shed(pipe, pieces, "")).Cuts[0]; (cut.Note != "") != (dry && loose) {
				t.Errorf("%s in %s: %q", joint, pipe, cut.Note)
			}
		}
	}
}

// What is in no table is not guessed: the length before it comes off is said, and why.
func TestCutsAtFittingsToMeasure(t *testing.T) {
	for fitting, word := range map[string]string{
		"valve: ball": "valve", "union: {}": "union", "clean_out: {}": "clean-out", "check_valve: {kind: swing}": "check valve",
		"bend: {angle: 90 deg, joint: ring-seal}": "bend",
	} {
		bend := "{bend: 90 deg}"
		if strings.HasPrefix(fitting, "bend") {
			bend = ""
		}
		pieces := strings.Join(slices.DeleteFunc([]string{"{intake: {at: 900 mm, facing: level}}", "{across: 400 mm}", "{" + fitting + "}", "{across: 300 mm}", bend, "{fall: fit}", "{outlet: {at: 400 mm, facing: down}}"},
			func(s string) bool { return s == "" }), ", ")
		if bend == "" {
			pieces = strings.Replace(pieces, "{across: 300 mm}, ", "", 1)
		}
		cut := listed(t, shed(fmt.Sprintf(schedule40, "1 in"), pieces, "")).Cuts[0]
		if cut.Known || !strings.Contains(cut.Why, "measure the "+word) || len(cut.Marks) > 0 {
			t.Errorf("%s: known %v, %q", fitting, cut.Known, cut.Why)
		}
		about(t, fitting+", longest", cut.Longest.X, 0.4, 1e-9)
	}
}

// Fittings that overlap leave no pipe.
func TestNoRoomBetweenTwoElbows(t *testing.T) {
	cut := listed(t, shed(fmt.Sprintf(schedule40, "2 in"), "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: 90 deg}, {across: 60 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}", "")).Cuts[1]
	if cut.Known || !strings.Contains(cut.Why, "overlap") {
		t.Errorf("60 mm between two elbows that take 33 each: known %v, %q", cut.Known, cut.Why)
	}
}

// A pipe that ends in a wall stands out of it: as the file says, else a little.
func TestPipeThatStandsOutOfAWall(t *testing.T) {
	for projects, want := range map[string][2]float64{", projects: 67 mm": {67, 67}, "": {25, 40}} {
		pieces := "{through: {wall_of: tank, at: 500 mm, seal: {hole: 44.5 mm}" + projects + "}}, {across: 500 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
		cut := listed(t, shed(fmt.Sprintf(schedule40, "1 in"), pieces, "")).Cuts[0]
		about(t, "stands out, mm", 1000*cut.Beyond.X, want[0], 1e-6)
		about(t, "at the most, mm", 1000*cut.Beyond.High, want[1], 1e-6)
		about(t, "cut, mm", 1000*cut.Length.X, 500+want[0]-17.5, 1e-6)
		about(t, "mark at the wall, mm", 1000*cut.Marks[0], want[0], 1e-6)
		if (cut.Note == "") != (projects != "") {
			t.Errorf("with %q the note is %q", projects, cut.Note)
		}
	}
}

// A row of tees and a vent are pipe too.
func TestRowsOfTeesAndVents(t *testing.T) {
	pieces := "{intake: {at: 900 mm, facing: level}}, {across: 300 mm}, {tee: {id: beds, way: through, third: cap, count: 4, every: 300 mm}}, {across: 200 mm}, " +
		"{tee: {way: turn, third: vent, top_at: 1200 mm}}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
	b := listed(t, shed(fmt.Sprintf(schedule40, "1 in"), pieces, ""))
	row, vent := b.Cuts[1], b.Cuts[3]
	about(t, "between two tees, mm", 1000*row.Length.X, 300-2*17.5, 0.1)
	about(t, "vent, mm", 1000*vent.Length.X, 300-17.5, 0.1)
	if row.Count != 3 || vent.To != "open top" {
		t.Errorf("%d pipes between four tees, vent to %q", row.Count, vent.To)
	}
	if part := slices.IndexFunc(b.Parts, func(p Part) bool { return p.Name == "tee" }); b.Parts[part].Count != 5 {
		t.Errorf("%v tees, not 5", b.Parts[part].Count)
	}
}

package corpus_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"dryfit/internal/system"
)

// manifold is a loop as large as a file may describe: a riser with a tee for each of so many beds, from each bed a line
// back to the sump, pieces as short and as long as may be, fish in every other bed.
func manifold(beds int) string {
	var vessels, tees, runs, fish strings.Builder
	drain := func(from string, at, across int) {
		fmt.Fprintf(&runs, "  drain-%s: {from: %s, to: sump, pipe: wide, joints: cemented, pieces: [{through: {wall_of: %s, at: %d mm, seal: {hole: 78 mm}}}, "+
			"{across: %d mm}, {bend: 90 deg}, {across: 1 mm}, {bend: 90 deg}, {across: 1 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 450 mm, facing: down}}]}\n", from, from, from, at, across)
	}
	drain("tank", 650, 300)
	for i := range beds {
		id := fmt.Sprintf("bed-%d", i)
		fmt.Fprintf(&vessels, "  %s: {role: raft-bed, form: {box: {length: %d mm, width: 700 mm, height: 400 mm}}, stands_at: 700 mm}\n", id, 900+i*41%600)
		fmt.Fprintf(&tees, "      - across: %d mm\n      - tee: {id: t%d, way: through, third: line}\n", 1+i%7*i%7*400, i)
		fmt.Fprintf(&runs, "  feed-%d: {from: riser.t%d, to: %s, pipe: feed, joints: cemented, pieces: [{across: %d mm}, {valve: ball}, {bend: 45 deg}, {bend: 45 deg}, {across: 20 m}, "+
			"{over: {rim_of: %s, at: 450 mm}}, {across: 150 mm}, {bend: 90 deg}, {fall: 60 mm}, {outlet: {facing: down}}]}\n", i, i, id, 200+i*17%300, id)
		drain(id, 250, 200+i*31%500)
		if i%2 == 0 {
			fmt.Fprintf(&fish, "  - {in: %s, species: silver-perch, mass: %d kg, feed: [{at: 14 degC, amount: 38 g/d}, {at: 21 degC, amount: 120 g/d}], protein: 36 %%}\n", id, 1+i%9)
		}
	}
	return fmt.Sprintf(`dryfit: 1
name: %d beds on a manifold
site: {under: indoors}
water: {temperature: 20 degC}
working_flow: {least: 0 L/h, most: %d L/h}
pipes: {main: {inside: 104 mm}, feed: {inside: 20 mm}, wide: {inside: 60 mm}}
vessels:
%s  tank: {role: fish-tank, form: {cylinder: {inside: 1600 mm, height: 900 mm}}, stands_at: 100 mm}
  sump:
    role: sump
    form: {box: {length: %d mm, width: 1000 mm, height: 600 mm}}
    stands_at: 0 mm
    water: {running: 350 mm}
fish:
%spumps:
  main: {shut_off: 4 m, open_flow: %d L/h, dry_below: 60 mm}
lines:
%s  riser:
    from: sump
    to: tank
    pipe: main
    joints: cemented
    pieces:
      - intake: {at: 50 mm}
      - pump: main
      - rise: fit
      - bend: 90 deg
%s      - across: 300 mm
      - over: {rim_of: tank, at: 1050 mm}
      - across: 150 mm
      - bend: 90 deg
      - fall: 60 mm
      - outlet: {facing: down, nozzle: 20 mm}
`, beds, 1500*beds, vessels.String(), 900+100*beds, fish.String(), 1200*(beds+1), runs.String(), tees.String())
}

// What is given up in time must be a loop that is read, and no mistake.
func TestTheCrowdedManifoldIsRead(t *testing.T) {
	s, problems := system.Read("crowded.yaml", []byte(manifold(94)))
	if len(problems) > 0 {
		t.Fatal(problems[0])
	}
	pieces := 0
	for _, l := range s.Lines {
		pieces += len(l.Pieces)
	}
	if len(s.Vessels) < 96 || pieces < 1900 {
		t.Errorf("it has only %d vessels and %d pieces", len(s.Vessels), pieces)
	}
}

func object(t *testing.T, text string) map[string]any {
	t.Helper()
	var m map[string]any
	if err := json.Unmarshal([]byte(text), &m); err != nil {
		t.Fatalf("%v: %.200s", err, text)
	}
	return m
}

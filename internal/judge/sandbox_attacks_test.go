package judge

import (
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"runtime"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/topdown"
	"github.com/open-policy-agent/opa/v1/types"

	"dryfit/internal/review"
)

// pairs hides from the compiler what is doubled: it would type the whole of it.
const pairs = "pair(x) := [x, x]\n"

// doublings is n arrays of which each holds the one before twice: small as a term,
// 2 to the n elements when written out.
func doublings(name string, n int, seed, form string) string {
	text := fmt.Sprintf("%s0 := [%s]\n", name, seed)
	for i := range n {
		text += fmt.Sprintf("%s%d := %s\n", name, i+1, strings.ReplaceAll(form, "x", fmt.Sprint(name, i)))
	}
	return text
}

// attack is a clause that means harm, with what is said of it; or one that only looks as if it did.
type attack struct {
	helpers, answer, body string // or else text, the whole file
	says                  string
	bounds                bounds // where those of the table are not meant
	text                  string
}

const harmless = "harmless"

// tight is the bounds of the table: those that hold in the program are wider.
var tight = bounds{300 * time.Millisecond, 96 << 20}

// Over a bound, a clause is let go on until the engine looks up, and the heap until it is looked at.
const (
	overTime = time.Second
	overHeap = 160 << 20
)

// attacks is every way we know to get out of the sandbox, or to take time or memory without end.
func attacks() map[string]attack {
	ten := "ten := [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]\n"
	loop, sum := "", "x0"
	for i := range 12 {
		loop += fmt.Sprintf("some x%d in ten\n", i)
		if i > 0 {
			sum += fmt.Sprintf(" + x%d", i)
		}
	}
	chain := "c0 := 1\n"
	for i := range 900 {
		chain += fmt.Sprintf("c%d := c%d + c%d\n", i+1, i, i)
	}
	deep := "true"
	for i := range 12 {
		deep = fmt.Sprintf("count([x%d | some x%d in ten; %s]) >= 0", i, i, deep)
	}
	thousand := "thousand := [" + strings.Repeat("1,", 999) + "1]\n"
	all := map[string]attack{
		"a join of 10^12":                 {ten, "1", loop + sum + " == -1", "took too long", bounds{}, ""},
		"a join with a set":               {ten, "1", "s := {[a, b, c, d, e] | some a in ten; some b in ten; some c in ten; some d in ten; some e in ten}\nsome p in s\nsome q in s\nsome r in s\np == q\nr[0] == -1", "took too", bounds{}, ""},
		"a set of 10^12":                  {ten, "1", "count({[" + strings.ReplaceAll(sum, " +", ",") + "] | " + strings.ReplaceAll(strings.TrimSpace(loop), "\n", "; ") + "}) == -1", "took too", bounds{}, ""},
		"comprehensions 12 deep":          {ten, "1", "y := " + deep + "\ny", "took too long", bounds{}, ""},
		"an array of 10^9":                {thousand, "1", "count([[i, j, k] | some i in thousand; some j in thousand; some k in thousand]) == 1", "took too much memory", bounds{time.Minute, 64 << 20}, ""},
		"an object of 10^12":              {ten, "1", "count({[" + strings.ReplaceAll(sum, " +", ",") + "]: 1 | " + strings.ReplaceAll(strings.TrimSpace(loop), "\n", "; ") + "}) == 1", "took too", bounds{}, ""},
		"comparing 2^27":                  {pairs + doublings("a", 27, "1", "pair(x)") + doublings("b", 27, "1", "pair(x)"), "1", "a27 == b27", "took too long", bounds{}, ""},
		"answers that share 2^33":         {doublings("a", 33, "1", "[x, x]"), "a33", "true", errShape.Error(), bounds{}, ""},
		"a missing list of 2^33":          {doublings("a", 33, "1", "[x, x]"), `{"subject": "s", "quantity": "turn", "verdict": "undetermined", "missing": {a33}}`, "true", errShape.Error(), bounds{}, ""},
		"2^27 answers that all but agree": {pairs + doublings("a", 27, "1", "pair(x)") + doublings("b", 27, "2", "pair(x)"), "x", "some x in [a27, b27]", "", bounds{}, ""},
		"2^22 parts to type":              {doublings("a", 22, "1", "[x, x]") + doublings("b", 22, "1", "[x, x]") + "same if a22 == b22\n", "1", "same", "it does not load", bounds{}, ""},
		"5001 judgements":                 {list(mostJudgements + 1), "x", "some x in list", "it makes 5001 judgements", bounds{}, ""},
		"answers without end":             {thousand, "[i, j, k]", "some i, _ in thousand\nsome j, _ in thousand\nsome k, _ in thousand", "took too", bounds{}, ""},
		"a chain of 900 doubled numbers":  {chain, "1", "c900 == 1\n", harmless, bounds{}, ""},
		"a rule that calls itself":        {"f(x) := f(x + 1)\n", "1", "f(1) == 1", "recursive", bounds{}, ""},
		"rules that call one another":     {"p if q\nq if r\nr if p\n", "1", "p", "recursive", bounds{}, ""},
		"a rule that reads its answers":   {"", "x", "some x in judgements", "recursive", bounds{}, ""},
		"walking without end":             {"", "1", "walk(input.sets.solids_lines, [p, v])\np == v", "walk", bounds{}, ""},
		"a graph without end":             {"", "1", `count(graph.reachable({"a": ["a"]}, {"a"})) == 9`, "graph.reachable", bounds{}, ""},
		"a bomb of replace":               {"", "1", `x := replace("aaaa", "a", "aaaa")` + "\nx == 1", "replace", bounds{}, ""},
		"a bomb of concat":                {"", "1", `x := concat("aaaa", ["a", "a"])` + "\nx == 1", "concat", bounds{}, ""},
		"a bomb of sprintf":               {"", "1", `x := sprintf("%999999d", [1])` + "\nx == 1", "sprintf", bounds{}, ""},
		"a number with a long exponent":   {"", "1", "1e999999999 + 1 == 1", "", bounds{}, ""},
		"numbers added without end":       {"", "1", "x := 1e300 + 1e-300\ny := x - 1e300\ny == 1", harmless, bounds{}, ""},
		"asking the network":              {"", "1", `http.send({"method": "get", "url": "http://localhost"}).status_code == 200`, "http.send", bounds{}, ""},
		"looking up a name":               {"", "1", `count(net.lookup_ip_addr("localhost")) == 1`, "net.lookup_ip_addr", bounds{}, ""},
		"reading the environment":         {"", "1", `opa.runtime().env.PATH == "x"`, "opa.runtime", bounds{}, ""},
		"reading the clock":               {"", "1", "time.now_ns() == 1", "time.now_ns", bounds{}, ""},
		"throwing dice":                   {"", "1", `rand.intn("a", 5) == 1`, "rand.intn", bounds{}, ""},
		"an identity out of the air":      {"", "1", `uuid.rfc4122("a") == "1"`, "uuid.rfc4122", bounds{}, ""},
		"a file as a schema":              {"", "1", `json.match_schema({}, "file:///etc/passwd") == 1`, "json.match_schema", bounds{}, ""},
		"a module within a module":        {"", "1", `rego.parse_module("a", "package a").x == 1`, "rego.parse_module", bounds{}, ""},
		"reading the book":                {"", "1", "count(data.book.lines.sharp_bend.judgements) == 1", onlyVocabulary, bounds{}, ""},
		"reading all that there is":       {"", "1", "some x in data\nx == 1", onlyVocabulary, bounds{}, ""},
		"putting another limit in place":  {"", "1", "data.vocab.always with input.limits.lines.house_turn as {}", "with is for tests", bounds{}, ""},
		"another number than worked out":  {"", `{"subject": "solids-run/2", "quantity": "turn", "limit": {"most": 0.785398}, "at": "", "verdict": "met", "value": 0.5, "when": "always"}`, "true", "does not follow", bounds{}, ""},
		"an answer that is a number":      {"", "1", "true", errShape.Error(), bounds{}, ""},
		"an answer with a long text":      {"", `{"subject": "` + strings.Repeat("s", mostLetters+1) + `", "quantity": "turn"}`, "true", errShape.Error(), bounds{}, ""},
		"a function that panics":          {"", "1", "trap.fall(1) == 1", "the Rego engine failed", bounds{}, ""},
		"a call that cannot work":         {"", "1", `x := object.remove(1, ["a"])` + "\nx", "object.remove", bounds{}, ""},
		"a number that is divided by 0":   {"", "1", "1 / 0 == 1", "div", bounds{}, ""},
		"answers that contradict":         {"f(x) := 1 if x > 0\nf(x) := 2 if x > 1\n", "1", "f(2) == 1", "conflicting values", bounds{}, ""},
		"300 functions in a row":          {fmt.Sprint("f0(x) := x\n", row(300)), "1", "f300(1) == 2", harmless, bounds{}, ""},
		"4000 rules":                      {manyRules(4000), "1", "r3999 == 2", harmless, bounds{}, ""},
		"a file of 65 kB":                 {strings.Repeat("# more\n", mostBytes/7), "1", "true", "at most 65536 bytes", bounds{}, ""},
		"brackets 20000 deep":             {"x := " + strings.Repeat("[", 20000) + strings.Repeat("]", 20000) + "\n", "1", "x == 1", "it does not load", bounds{}, ""},
		"braces 40 deep":                  {"x := " + strings.Repeat("{", 40) + "1" + strings.Repeat("}", 40) + "\n", "1", "x == 1", "", bounds{}, ""},
		"20000 ands":                      {"", "1", "x := 1" + strings.Repeat(" + 1", 9000) + "\nx == 2", "", bounds{}, ""},
	}
	turned := func(from, to string) attack {
		return attack{text: strings.Replace(houseClause, from, to, 1), says: "it does not load"}
	}
	bomb := "#   a0: &a0 [x, x, x, x, x, x, x, x, x]\n"
	for i := range 9 {
		bomb += fmt.Sprintf("#   a%d: &a%d [%s]\n", i+1, i+1, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*a%d, ", i), 9), ", "))
	}
	all["METADATA of 9^9 words"] = turned("# custom:\n", "# custom:\n"+bomb)
	all["METADATA 10000 deep"] = turned("[always]", strings.Repeat("[", 10000)+strings.Repeat("]", 10000))
	all["a title that moves the cursor"] = turned("Every turn shall", "\"Every\\e[2J turn shall\"\n# note:")
	all["a title that turns round"] = turned("Every turn", "Every \u202eturn")
	all["a description without end"] = turned("The school's drain rods are stiff.", strings.Repeat("stiff ", 9000))
	all["the words of the book again"] = turned("package house.lines.house_turn", "package vocab")
	all["a clause of the book again"] = turned("package house.lines.house_turn", "package book.lines.sharp_bend")
	all["another rule of the book"] = turned("judgements contains vocab", "data.book.lines.sharp_bend.limit := 1\n\njudgements contains vocab")
	return all
}

// list is the numbers from 0, so many.
func list(n int) string {
	all := make([]string, n)
	for i := range all {
		all[i] = fmt.Sprint(i)
	}
	return "list := [" + strings.Join(all, ",") + "]\n"
}

// row is n functions of which each calls the one before.
func row(n int) string {
	var text strings.Builder
	for i := range n {
		fmt.Fprintf(&text, "f%d(x) := f%d(x)\n", i+1, i)
	}
	return text.String()
}

// manyRules is n rules without a meaning.
func manyRules(n int) string {
	var text strings.Builder
	for i := range n {
		fmt.Fprintf(&text, "r%d := 1\n", i)
	}
	return text.String()
}

// trap is a function that panics, which no clause can call outside this test.
func trap(t *testing.T) {
	t.Helper()
	f := &ast.Builtin{Name: "trap.fall", Decl: types.NewFunction(types.Args(types.N), types.N)}
	ast.RegisterBuiltin(f)
	topdown.RegisterBuiltinFunc(f.Name, func(topdown.BuiltinContext, []*ast.Term, func(*ast.Term) error) error { panic("it fell") })
	before := allowed
	allowed = append(slices.Clone(allowed), f.Name)
	t.Cleanup(func() {
		allowed = before
		ast.Builtins = slices.DeleteFunc(ast.Builtins, func(b *ast.Builtin) bool { return b == f })
	})
}

// Every attack is told with its clause, within its bounds, and the book and the other clause
// of the house judge as if it were not there.
func TestAttacks(t *testing.T) {
	trap(t)
	other := strings.NewReplacer("house_turn", "kept").Replace(houseClause)
	want := verdicts(judge(t, mustLoad(t, fstest.MapFS{"kept.rego": {Data: []byte(other)}}), soundLoop().Ledger))
	table := attacks()
	for _, name := range sorted(table) {
		a := table[name]
		t.Run(strings.ReplaceAll(name, " ", "_"), func(t *testing.T) {
			if a.bounds == (bounds{}) {
				a.bounds = tight
			}
			folder := fstest.MapFS{
				"house_turn.rego": {Data: []byte(cmp.Or(a.text, hostileText(a.helpers, a.answer, a.body)))},
				"kept.rego":       {Data: []byte(other)},
			}
			b := newBook(catalogue(), bounds{deadline, heap}, a.bounds, little, firstSeven, folder)
			ledger := soundLoop().Ledger
			peak, stop := watched()
			start := time.Now()
			got, failed, err := b.Judge(context.Background(), ledger)
			took := time.Since(start)
			stop()
			if err != nil || !slices.Equal(verdicts(got), want) {
				t.Errorf("%d judgements in place of %d, error %v", len(got), len(want), err)
			}
			if a.says == harmless { // to judge, but a busy machine may be too slow to load it in so short a time
				a.says = "took too long"
			}
			if table[name].says == harmless && len(failed) == 0 {
				t.Logf("%6.0f ms %4d MB  harmless", float64(took.Microseconds())/1000, *peak>>20)
			} else if len(failed) != 1 || failed[0].Clause != "house_turn" || !strings.Contains(failed[0].Why, a.says) {
				t.Errorf("failed: %v", failed)
			}
			if most := 2*min(a.bounds.time, 10*time.Second) + 2*grace + overTime; took > most {
				t.Errorf("took %v, more than %v", took, most)
			}
			if most := a.bounds.heap + overHeap; *peak > most {
				t.Errorf("the heap grew by %d MB, more than %d", *peak>>20, most>>20)
			}
			if len(failed) == 1 {
				t.Logf("%6.0f ms %4d MB  %.120s", float64(took.Microseconds())/1000, *peak>>20, failed[0].Why)
			}
		})
	}
}

func verdicts(all []*review.Judgement) []string {
	var out []string
	for _, j := range all {
		out = append(out, fmt.Sprint(j.Clause.ID, " ", j.Subject, " ", j.Verdict, " ", j.Value.X, " ", j.Word))
	}
	return out
}

func mustLoad(t *testing.T, houses ...fs.FS) *Book {
	t.Helper()
	b, err := Load(catalogue(), firstSeven, houses...)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// watched measures by how much the heap grows at most until it is stopped.
func watched() (peak *uint64, stop func()) {
	runtime.GC()
	peak, start, end, done := new(uint64), heapSize(), make(chan bool), make(chan bool)
	go func() {
		defer close(done)
		for {
			select {
			case <-end:
				return
			case <-time.After(time.Millisecond):
				if size := heapSize(); size > start {
					*peak = max(*peak, size-start)
				}
			}
		}
	}()
	return peak, func() { close(end); <-done }
}

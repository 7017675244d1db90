package quantity

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// fault is one way of writing that is refused. Its mend returns the text without
// it, in every sense it may have had; nothing if the fault is not there.
type fault struct {
	problem string
	mend    func(k *info, s string) []string
}

// swap mends by a pattern and its replacements.
func swap(pattern string, replacements ...string) func(*info, string) []string {
	re := regexp.MustCompile(pattern)
	return func(_ *info, s string) []string {
		if !re.MatchString(s) {
			return nil
		}
		var mended []string
		for _, r := range replacements {
			mended = append(mended, re.ReplaceAllString(s, r))
		}
		return mended
	}
}

// join mends by taking characters out of what the pattern finds at the start.
func join(pattern, out string) func(*info, string) []string {
	re := regexp.MustCompile(pattern)
	return func(_ *info, s string) []string {
		number := re.FindString(s)
		if number == "" {
			return nil
		}
		whole := strings.Map(func(r rune) rune {
			if strings.ContainsRune(out, r) {
				return -1
			}
			return r
		}, number)
		return []string{strings.Replace(whole, ",", ".", 1) + s[len(number):]}
	}
}

// faults are tried in this order.
var faults = []fault{
	{"the sign must be a plain - against the number", swap(`^(?:[−–—‐‑] *|- +)([0-9.])`, `-$1`)},
	{"only a number and its unit are wanted here",
		swap(`^(?i:[+±~≈<>≤≥=]+ +|[±~≈<>≤≥=]+|(?:about|approx\.?|around|ca\.?|at least|at most|max\.?|min\.?|up to) *)([0-9.-])`, `$1`)},
	{"one number is wanted here, not a range", spread},
	{"a fraction is written with / here", vulgar},

	{"the number has thousands separators and a decimal comma", join(`^[-+]?[0-9]{1,3}(?:[. '’_][0-9]{3})+,[0-9]+`, ". '’_")},
	{"the number has thousands separators", join(`^[-+]?[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+`, ",")},
	{"the number has thousands separators", join(`^[-+]?[0-9]{1,3}(?:,[0-9]{3}){2,}`, ",")},
	{"the number has thousands separators", join(`^[-+]?[0-9]{1,3}(?:\.[0-9]{3}){2,}`, ".")},
	{"the number has thousands separators", join(`^[-+]?[0-9]{1,3}(?:[ '’_][0-9]{3})+(?:\.[0-9]+)?`, " '’_")},
	{"a comma may stand for thousands or for a decimal point", swap(`^([-+]?[1-9][0-9]{0,2}),([0-9]{3})(|[^0-9,.].*)$`, `$1$2$3`, `$1.$2$3`)},
	{"the number has a decimal comma", swap(`^([-+]?[0-9]+),([0-9]+)(|[^0-9,.].*)$`, `$1.$2$3`)},
	{"a digit is missing before the decimal point", swap(`^([-+]?)[.,]([0-9])`, `${1}0.$2`)},
	{"a digit is missing after the decimal point", swap(`^([-+]?[0-9]+)\.( *(?:[^0-9. ].*)?)$`, `$1$2`)},
	{"the number has an exponent", exponent},

	{"the unit stands after the number", swap(`^([A-Z]{3}|[$€£]) *([0-9][0-9.,]*)$`, `$2 $1`)},
	{"one number with one unit is wanted here", compound},
	{"feet and inches are written ft and in", prime},
	{"the fraction must be smaller than one and not divide by zero", improper},
	{"hardness and alkalinity are written in mg/L CaCO3", hardnessAndAlkalinity},
}

var (
	rangePattern    = regexp.MustCompile(`^([-+]?[0-9][0-9.,]*) *([^0-9]*?) *(?:\.\.+|to|–|—|-|±|\+/-) *([0-9][0-9.,]*) *([^-0-9/ ].*)?$`)
	vulgarPattern   = regexp.MustCompile(`^([-+]?[0-9]*) ?([½⅓⅔¼¾⅛⅜⅝⅞])`)
	exponentPattern = regexp.MustCompile(`^([-+]?[0-9]+(?:\.[0-9]+)?) ?(?:[eE]|[x×*·] ?10\^)([-+]?[0-9]{1,2})`)
	compoundPattern = regexp.MustCompile(`^([0-9.]+) *([^0-9 ]+|[^0-9 ]*[a-z][23]) *([0-9][0-9./ -]*[^0-9 ].*)$`)
	improperPattern = regexp.MustCompile(`^([-+]?)(?:([0-9]+)[ -]+)?([0-9]+)/([0-9]+)(.*)$`)
	hardnessPattern = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) *(?i:(°? ?d[kg]?h|degrees? kh|kh|gh)|(meq/L))$`)
)

// spread mends a range: its two ends, each with the unit.
func spread(_ *info, s string) []string {
	m := rangePattern.FindStringSubmatch(s)
	if m == nil {
		return nil
	}
	if m[2] == "" {
		m[2] = m[4]
	}
	return []string{strings.TrimSpace(m[1] + " " + m[2]), strings.TrimSpace(m[3] + " " + m[4])}
}

var vulgarFractions = map[string]string{
	"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}

// vulgar mends 1½.
func vulgar(_ *info, s string) []string {
	m := vulgarPattern.FindStringSubmatch(s)
	if m == nil {
		return nil
	}
	whole := m[1]
	if digits(strings.TrimLeft(whole, "+-")) > 0 {
		whole += " "
	}
	return []string{whole + vulgarFractions[m[2]] + s[len(m[0]):]}
}

// exponent mends 1.2e3 and 1.2x10^3.
func exponent(_ *info, s string) []string {
	m := exponentPattern.FindStringSubmatch(s)
	if m == nil {
		return nil
	}
	value, ok := new(big.Rat).SetString(m[1] + "e" + m[2])
	if !ok {
		return nil
	}
	return []string{decimal(value, 30) + " " + strings.TrimLeft(s[len(m[0]):], " ")}
}

// compound mends 5 ft 3 in and 1 h 30 min: the sum, in the second unit.
func compound(k *info, s string) []string {
	m := compoundPattern.FindStringSubmatch(strings.TrimSpace(primes.Replace(s)))
	if m == nil {
		return nil
	}
	first, problem1 := k.accept(m[1] + " " + m[2])
	second, problem2 := k.accept(m[3])
	if problem1+problem2 != "" || second.Unit == "" {
		return nil
	}
	n, _ := k.unit(second.Unit)
	sum := new(big.Rat).Add(n.fromSI(first.SI), n.fromSI(second.SI))
	return []string{decimal(sum, 6) + " " + second.Unit}
}

var primes = strings.NewReplacer("''", " in ", `"`, " in ", "″", " in ", "”", " in ", "'", " ft ", "′", " ft ", "’", " ft ")

// prime mends 5' and 3".
func prime(_ *info, s string) []string {
	mended := strings.TrimSpace(primes.Replace(s))
	if mended == s || !strings.HasSuffix(mended, " in") && !strings.HasSuffix(mended, " ft") {
		return nil
	}
	return []string{mended}
}

// improper mends 1 5/2; a division by zero it only finds.
func improper(_ *info, s string) []string {
	m := improperPattern.FindStringSubmatch(s)
	if m == nil {
		return nil
	}
	top, bottom := integer(m[3]), integer(m[4])
	if bottom.Sign() == 0 {
		return []string{""}
	}
	if m[2] == "" || top.Cmp(bottom) < 0 {
		return nil
	}
	value := new(big.Rat).SetFrac(top, bottom)
	value.Add(value, new(big.Rat).SetInt(integer(m[2])))
	return []string{m[1] + decimal(value, 6) + m[5]}
}

// hardnessAndAlkalinity mends German degrees and milliequivalents.
//
// Source: 1 degree is 10 mg/L CaO, by the molar masses 100.087 and 56.077 g/mol
// 17.848 mg/L CaCO3; 1 meq of CaCO3 is half its molar mass, 50.04 mg.
func hardnessAndAlkalinity(k *info, s string) []string {
	m := hardnessPattern.FindStringSubmatch(s)
	if m == nil || k.kind != Concentration {
		return nil
	}
	x, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		return nil
	}
	if m[3] != "" {
		x *= 50.04
	} else {
		x *= 17.848
	}
	return []string{trimmed(x, 3, free) + " mg/L CaCO3"}
}

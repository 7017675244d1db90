package quantity

import (
	"slices"
	"strings"
)

// misspelt says what is wrong with the text where a unit should stand after the
// number, and offers what may have been meant.
func (k *info) misspelt(w written) (problem string, offers []string) {
	rest := w.rest
	if rest == "" {
		return k.missing(w.fraction)
	}
	if k.kind == Money {
		if problem, offers := currency(rest); problem != "" {
			return problem, offers
		}
	}
	if k.basis {
		if problem, offers := k.misspeltBasis(rest); problem != "" {
			return problem, offers
		}
	}
	if names := k.spelling(rest); len(names) > 0 {
		return reason(rest, names), names
	}
	if other := owner(rest); other != "" {
		problem = show(rest) + " is " + other.described() + ", " + k.kind.described() + " is wanted here"
		if k.kind == Number {
			return problem, []string{""}
		}
		return problem, nil
	}
	if k.kind == Number {
		return "a plain number is wanted here, nothing after it", []string{""}
	}
	problem = show(rest) + " is no unit of " + k.title
	if near := k.nearest(rest); near != "" {
		return problem, []string{near}
	}
	return problem, nil
}

// missing offers the usual unit for a bare number, a customary one for a fraction.
func (k *info) missing(fraction bool) (problem string, offers []string) {
	if k.kind == Money {
		return "a currency is missing", []string{"NZD"}
	}
	for _, n := range k.units {
		if n.fractions && fraction {
			return "a unit is missing", []string{n.name}
		}
	}
	return "a unit is missing", []string{k.units[0].name}
}

// reason says why a spelling is refused that means these units.
func reason(spelling string, names []string) string {
	if why, ok := doubtful[strings.ToLower(spelling)]; ok {
		return why
	}
	if len(names) > 1 {
		return doubtful["gal"]
	}
	return show(spelling) + " is spelt " + names[0] + " here"
}

// doubtful are units that have more than one sense, with the reason.
var doubtful = map[string]string{
	"gal": "gal may be the US or the imperial gallon", "gph": "gph does not say which gallon",
	"gpm": "gpm does not say which gallon", "gpd": "gpd does not say which gallon",
	"ppm": "ppm does not say of what: by mass or by volume", "ppb": "ppb does not say of what: by mass or by volume",
	"ppt": "ppt may be per thousand or per million million",
	"°":   "a bare ° may be an angle or a temperature", "º": "a bare ° may be an angle or a temperature",
}

// currency reads what is no ISO 4217 code.
func currency(rest string) (problem string, offers []string) {
	signs := map[string][]string{"$": {"AUD", "NZD", "USD"}, "€": {"EUR"}, "£": {"GBP"}, "¥": {"CNY", "JPY"}}
	if codes, ok := signs[rest]; ok {
		return rest + " is written as an ISO 4217 code here", codes
	}
	if upper := strings.ToUpper(rest); isCode(upper) && owner(rest) == "" {
		return "a currency code has three capital letters", []string{upper}
	}
	return "", nil
}

// misspeltBasis reads a good or nearly good unit with a bad basis after it.
func (k *info) misspeltBasis(rest string) (problem string, offers []string) {
	cut := strings.IndexAny(rest, " -")
	if cut < 0 {
		return "", nil
	}
	names := k.spelling(rest[:cut])
	if len(names) != 1 {
		return "", nil
	}
	word := strings.TrimSpace(rest[cut+1:])
	if isBasis(word) && names[0] != rest[:cut] {
		return reason(rest[:cut], names), []string{names[0] + " " + word}
	}
	last := word[strings.LastIndexAny(word, " -")+1:]
	if strings.EqualFold(last, "TAN") {
		last = "N"
	}
	for _, basis := range basisWords {
		if strings.EqualFold(basis, last) {
			return "the basis is one word after the unit", []string{names[0] + " " + basis}
		}
	}
	return show(word) + " is no basis known here", []string{names[0] + " CaCO3", names[0] + " N", names[0]}
}

// spelling finds the units of the kind that the text means, though it spells them
// in another way: l/h, litres per hour, lph.
func (k *info) spelling(text string) []string {
	if text == "°" || text == "º" {
		switch k.kind {
		case Angle:
			return []string{"deg"}
		case Temperature, TemperatureDifference:
			return []string{"degC", "degF"}
		}
	}
	var names []string
	for _, folded := range fold(text) {
		for _, n := range k.units {
			if n.name != "" && strings.ToLower(n.name) == folded {
				names = append(names, n.name)
				break
			}
		}
	}
	return names
}

// owner is the first kind that has this unit, exactly or in another spelling.
func owner(text string) Kind {
	for _, k := range table {
		if _, ok := k.unit(text); ok && k.kind != Money {
			return k.kind
		}
	}
	for _, k := range table {
		if len(k.spelling(text)) > 0 {
			return k.kind
		}
	}
	if isCode(text) {
		return Money
	}
	return ""
}

// fold brings a unit into lower case and its words into ours. A bare gallon is
// both gallons.
func fold(text string) []string {
	s := strings.ToLower(text)
	s = folder.Replace(s)
	if word, ok := words[s]; ok {
		s = word
	}
	parts := strings.Split(s, "/")
	for i, part := range parts {
		if word, ok := words[part]; ok {
			parts[i] = word
		}
	}
	if at := slices.Index(parts, "gal"); at >= 0 {
		us, imperial := slices.Clone(parts), slices.Clone(parts)
		us[at], imperial[at] = "gal(us)", "gal(imp)"
		return []string{strings.Join(us, "/"), strings.Join(imperial, "/")}
	}
	return []string{strings.Join(parts, "/")}
}

var folder = strings.NewReplacer(" per ", "/", "÷", "/", "^", "", " ", "", ".", "", "·", "", "*", "")

// words are other spellings of whole units or of their parts.
var words = wordList(
	"h: hr hrs hour hours", "min: mins minute minutes", "s: sec secs second seconds", "d: day days", "week: weeks wk wks",
	"l: litre litres liter liters ltr", "ml: cc cm3 millilitre millilitres milliliter milliliters",
	"m: metre metres meter meters mtr mh2o mwc mwg mhd", "mm: millimetre millimetres millimeter millimeters mmh2o mmwc",
	"cm: centimetre centimetres centimeter centimeters", "um: micron microns micrometre micrometer",
	"in: inch inches inh2o inwc inwg", "ft: foot feet fth2o fthd", "m2: sqm sqmetre sqmeter", "m3: cbm cum",
	"ft2: sqft sf", "in2: sqin", "ft3: cuft cf", "in3: cuin",
	"gal: gals gallon gallons", "gal(us): usgal usgals usgallon usgallons galus gallon(us) usg",
	"gal(imp): impgal galimp gal(uk) ukgal imperialgal imperialgallon imperialgallons gallon(imp) ukgallon ukgallons",
	"gal/h: gph", "gal/min: gpm", "gal/d: gpd", "gal(us)/h: usgph", "gal(us)/min: usgpm", "gal(imp)/h: igph", "gal(imp)/min: igpm",
	"l/h: lph", "l/min: lpm l/m", "l/s: lps", "m3/h: cmh", "ft3/min: cfm", "m/s: mps", "ft/s: fps", "ft/min: fpm", "mm/s: mmps",
	"kg: kgs kilo kilos kilogram kilograms", "g: gr gm gms gram grams gramme grammes", "mg: milligram milligrams",
	"t: tonne tonnes", "lb: lbs pound pounds", "oz: ounce ounces",
	"degc: c celsius centigrade degreesc degreec degreescelsius", "degf: f fahrenheit degreesf degreef degreesfahrenheit",
	"k: kelvin degk °k", "deg: degree degrees", "rad: radian radians", "%: percent pct percentage",
	"w: watt watts", "kw: kilowatt kilowatts", "kwh: kwhr kwhrs", "j: joule joules",
	"a: amp amps ampere amperes", "ma: milliamp milliamps", "v: volt volts vac vdc", "n: newton newtons", "lbf: lbsf poundforce",
	"mpa: n/mm2", "psi: psig lb/in2 lbf/in2", "bar: bars barg", "mbar: hpa",
	"mg/l: ppm", "ug/l: ppb", "g/l: ppt ‰", "shorea: shore-a",
	"g/m2/d: g/m2d g/(m2d) g/dm2 g/d/m2", "m2/m3: m-1 1/m",
)

func wordList(lines ...string) map[string]string {
	list := map[string]string{}
	for _, line := range lines {
		ours, others, _ := strings.Cut(line, ": ")
		for _, other := range strings.Fields(others) {
			list[other] = ours
		}
	}
	return list
}

// nearest is the unit of the kind with the fewest letters wrong, if they are few.
func (k *info) nearest(text string) string {
	const longestUnit = 14
	if len(text) > longestUnit || k.kind == Hardness { // Shore D is not Shore A misspelt
		return ""
	}
	for _, n := range k.units {
		if bare := strings.ReplaceAll(n.name, "/", ""); bare != "" && strings.EqualFold(bare, text) {
			return n.name // only the stroke is missing
		}
	}
	best, bound := "", 1
	if len(text) > 4 {
		bound = 2
	}
	for _, n := range k.units {
		if d := distance(strings.ToLower(text), strings.ToLower(n.name)); n.name != "" && d <= bound && d < len(n.name) {
			best, bound = n.name, d-1
		}
	}
	return best
}

// distance counts the letters to put in, take out or change (Levenshtein).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := corner
			if a[i] != b[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

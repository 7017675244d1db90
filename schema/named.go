package schema

// Named is a schema with the word by which it is asked for.
type Named struct {
	Name  string
	About string // what it describes, in one sentence
	Text  []byte
}

// All is the schemas of what people write, then of what dryfit writes.
var All = []Named{
	{"system", "A system file: one loop.", System},
	{"permits", "Leave to differ, in a file of its own beside a system file.", Permits},
	{"house", "What a house changes in limits and strengths.", House},
	{"guide", "What an instructor gives marks for.", Guide},
	{"moderation", "Marks that were changed by hand, with the reason.", Moderation},
	{"review", "What `dryfit review --as json` writes.", Review},
	{"lines", "One line of what `dryfit review --as lines` writes.", Lines},
	{"compare", "What `dryfit compare --as json` writes.", Compare},
	{"marks", "What `dryfit mark --as json` writes.", Marks},
}

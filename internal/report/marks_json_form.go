package report

// The form of the marks of a class as JSON. Its schema is schema/marks.schema.json.
type (
	marksRecord struct {
		Form        int            `json:"dryfit_marks"`
		Version     string         `json:"version"`
		Book        string         `json:"book"`
		House       string         `json:"house,omitempty"`
		Guide       guideRecord    `json:"guide"`
		Files       string         `json:"files"`
		Units       string         `json:"units,omitempty"`
		AsOf        string         `json:"as_of,omitempty"`
		Moderation  string         `json:"moderation,omitempty"`
		Totals      marksSpread    `json:"totals"`
		Items       []itemRecord   `json:"items"`
		Clauses     []clauseCount  `json:"clauses"`
		Slips       []slipCount    `json:"slips"`
		Missing     []missingCount `json:"missing"`
		Submissions []markedRecord `json:"submissions"`
		Pairs       []alikeRecord  `json:"pairs"`
		Unfit       []handRecord   `json:"unfit"`
	}
	guideRecord struct {
		Name  string  `json:"name"`
		Hash  string  `json:"sha256"`
		Total float64 `json:"total"`
		Bonus float64 `json:"bonus"`
	}
	marksSpread struct {
		Of       int     `json:"submissions"`
		Mean     float64 `json:"mean"`
		Least    float64 `json:"least"`
		Lower    float64 `json:"lower_quartile"`
		Median   float64 `json:"median"`
		Upper    float64 `json:"upper_quartile"`
		Greatest float64 `json:"greatest"`
	}
	itemRecord struct {
		Item  string      `json:"item"`
		Title string      `json:"title"`
		Marks float64     `json:"of"`
		Bonus bool        `json:"bonus,omitempty"`
		Lie   marksSpread `json:"marks"`
		Full  int         `json:"full"`
		None  int         `json:"none"`
	}
	clauseCount struct {
		Clause       string `json:"clause"`
		Sentence     string `json:"sentence"`
		Applies      int    `json:"applies"`
		Met          int    `json:"met"`
		NotMet       int    `json:"not_met"`
		Undetermined int    `json:"undetermined"`
	}
	slipCount struct {
		Name  string   `json:"slip"`
		Count int      `json:"count"`
		Items []string `json:"items"`
	}
	missingCount struct {
		Key   string `json:"key"`
		Count int    `json:"count"`
	}
	markedRecord struct {
		Number   int             `json:"number"`
		Name     string          `json:"submission"`
		Hash     string          `json:"sha256,omitempty"`
		Standing string          `json:"standing"`
		Why      string          `json:"why,omitempty"`
		Problems []problemRecord `json:"problems,omitempty"`
		LeftOut  []string        `json:"left_out,omitempty"`
		Total    *float64        `json:"total"`
		Sum      *float64        `json:"sum"`
		Was      *float64        `json:"worked_out_total,omitempty"`
		Changed  *handRecord     `json:"changed,omitempty"`
		Caps     []cappedRecord  `json:"caps,omitempty"`
		Lines    []lineRecord    `json:"items,omitempty"`
		Gains    []gainRecord    `json:"gains,omitempty"`
		NoGains  string          `json:"no_gains,omitempty"`
		Departs  []string        `json:"departs,omitempty"`
	}
	lineRecord struct {
		Item    string        `json:"item"`
		Marks   float64       `json:"marks"`
		Of      float64       `json:"of"`
		Reasons []string      `json:"reasons,omitempty"`
		Lost    []string      `json:"lost,omitempty"`
		Was     *float64      `json:"worked_out,omitempty"`
		Changed *handRecord   `json:"changed,omitempty"`
		Worked  *statesRecord `json:"stated,omitempty"`
	}
	statesRecord struct {
		Text    string       `json:"text"`
		Working string       `json:"working,omitempty"`
		Line    int          `json:"line"`
		Address string       `json:"address,omitempty"`
		Value   *valueRecord `json:"value,omitempty"`
		NoUnit  bool         `json:"no_unit,omitempty"`
		BadUnit bool         `json:"wrong_unit,omitempty"`
		Right   *valueRecord `json:"right,omitempty"`
		Carried *valueRecord `json:"carried,omitempty"`
		From    []fromRecord `json:"from,omitempty"`
		Band    int          `json:"band"`
		Slips   []slipRecord `json:"slips,omitempty"`
	}
	fromRecord struct {
		Address string `json:"address"`
		Text    string `json:"text"`
	}
	slipRecord struct {
		Name  string       `json:"slip"`
		Words string       `json:"words"`
		Value *valueRecord `json:"value,omitempty"`
	}
	cappedRecord struct {
		Cap  string       `json:"cap"`
		Most float64      `json:"most"`
		Why  string       `json:"why"`
		Open []openRecord `json:"open"`
	}
	openRecord struct {
		Clause  string `json:"clause"`
		Subject string `json:"subject"`
		Verdict string `json:"verdict"`
	}
	gainRecord struct {
		Marks float64 `json:"marks"`
		UpTo  bool    `json:"up_to,omitempty"`
		After bool    `json:"after_caps,omitempty"`
		Do    string  `json:"do"`
		Item  string  `json:"item,omitempty"`
	}
	handRecord struct {
		Submission string  `json:"submission"`
		Item       string  `json:"item,omitempty"`
		Marks      float64 `json:"marks"`
		Reason     string  `json:"reason"`
		By         string  `json:"by"`
		On         string  `json:"on,omitempty"`
		Stale      bool    `json:"stale,omitempty"`
	}
	alikeRecord struct {
		A      int           `json:"a"`
		B      int           `json:"b"`
		Agrees []agreeRecord `json:"agrees"`
	}
	agreeRecord struct {
		Key    string `json:"key"`
		Text   string `json:"text"`
		LineA  int    `json:"line_a"`
		LineB  int    `json:"line_b"`
		Others int    `json:"others"`
	}
)

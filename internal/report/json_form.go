package report

// The form of the JSON report. Its schema is schema/review.schema.json.
type (
	file struct {
		File       string          `json:"file"`
		ExitStatus int             `json:"exit_status"`
		Unread     string          `json:"unread,omitempty"`
		Fault      string          `json:"fault,omitempty"`
		Problems   []problemRecord `json:"problems,omitempty"`
		Review     *reviewRecord   `json:"review,omitempty"`
	}
	problemRecord struct {
		Place place  `json:"place"`
		Found string `json:"found"`
		Write string `json:"write"`
	}
	place struct {
		Line    int    `json:"line"`
		Column  int    `json:"column"`
		Pointer string `json:"pointer"`
	}
	reviewRecord struct {
		Name       string            `json:"name"`
		Status     string            `json:"status"`
		AsOf       string            `json:"as_of,omitempty"`
		Permits    []permitRecord    `json:"permits,omitempty"`
		House      *houseRecord      `json:"house,omitempty"`
		Failed     []failedRecord    `json:"not_judged,omitempty"`
		Tally      tallyRecord       `json:"clauses"`
		Unsought   string            `json:"no_remedies,omitempty"`
		Judgements []judgementRecord `json:"judgements"`
		Findings   []findingRecord   `json:"findings"`
		Silent     []string          `json:"nothing_to_judge"`
		Scenes     []sceneRecord     `json:"scenes"`
		Stated     []statedRecord    `json:"stated"`
		Assumed    []nodeRecord      `json:"assumed"`
		Grounds    []groundRecord    `json:"grounds,omitempty"`
		NotLooked  []remarkRecord    `json:"not_looked_at"`
	}
	permitRecord struct {
		Concession bool     `json:"concession"`
		Clause     string   `json:"clause"`
		Subject    string   `json:"subject"`
		Reason     string   `json:"reason"`
		Instead    string   `json:"instead,omitempty"`
		Who        string   `json:"who"`
		Since      string   `json:"since,omitempty"`
		Until      string   `json:"until"`
		Standing   string   `json:"standing"`
		Near       []string `json:"near,omitempty"`
		File       string   `json:"file,omitempty"` // where it does not stand in the system file
		Place      place    `json:"place"`
	}
	tallyRecord struct {
		Applying     int            `json:"applying"`
		Met          int            `json:"met"`
		NotMet       map[string]int `json:"not_met"`
		Undetermined map[string]int `json:"undetermined"`
	}
	valueRecord struct {
		SI    float64  `json:"si"`
		Unit  string   `json:"unit"`
		Kind  string   `json:"kind,omitempty"` // empty where Shown is the text of the file
		Shown string   `json:"shown"`
		Low   *float64 `json:"low,omitempty"`
		High  *float64 `json:"high,omitempty"`
	}
	limitRecord struct {
		Name  string   `json:"name"`
		Least *float64 `json:"least,omitempty"`
		Most  *float64 `json:"most,omitempty"`
		Unit  string   `json:"unit"`
		Kind  string   `json:"kind"`
		Shown string   `json:"shown"`
	}
	judgementRecord struct {
		Clause   string       `json:"clause"`
		Chapter  string       `json:"chapter"`
		Strength string       `json:"strength"`
		Safety   bool         `json:"safety,omitempty"`
		Subject  string       `json:"subject"`
		On       string       `json:"on,omitempty"`
		Quantity string       `json:"quantity,omitempty"`
		Fact     string       `json:"fact,omitempty"`
		Title    string       `json:"title"`
		Kind     string       `json:"kind,omitempty"`
		Value    *valueRecord `json:"value,omitempty"`
		Limit    *limitRecord `json:"limit,omitempty"`
		Word     string       `json:"word,omitempty"`
		Wanted   []string     `json:"wanted,omitempty"`
		OfLimit  *float64     `json:"of_limit,omitempty"`
		Within   bool         `json:"within_spread,omitempty"`
		Verdict  string       `json:"verdict"`
		When     string       `json:"when,omitempty"`
		Missing  []string     `json:"missing,omitempty"`
		Place    place        `json:"place"`
	}
	thenRecord struct {
		Title string       `json:"title"`
		Word  string       `json:"word,omitempty"`
		Value *valueRecord `json:"value,omitempty"`
	}
	findingRecord struct {
		Flag     int            `json:"flag"`
		Judged   int            `json:"judgement"` // its place in the list of judgements
		Sentence string         `json:"sentence"`
		Why      string         `json:"why,omitempty"`
		Sources  []sourceRecord `json:"sources"`
		Caution  string         `json:"caution,omitempty"`
		Working  *nodeRecord    `json:"working,omitempty"`
		Beside   []nodeRecord   `json:"beside,omitempty"`
		Remedies []remedyRecord `json:"remedies,omitempty"`
		Permit   *int           `json:"permit,omitempty"` // its place in the list of permits
	}
	sourceRecord struct {
		Grade string `json:"grade"`
		Text  string `json:"text"`
	}
	remedyRecord struct {
		Text  string       `json:"text"`
		Then  *thenRecord  `json:"then,omitempty"`
		Edits []editRecord `json:"edits"`
	}
	editRecord struct {
		Op      string `json:"op"`
		Pointer string `json:"pointer"`
		Value   any    `json:"value,omitempty"`
	}
	nodeRecord struct {
		Symbol  string       `json:"symbol,omitempty"`
		Title   string       `json:"title"`
		Address string       `json:"address,omitempty"`
		Origin  string       `json:"origin"`
		Pointer string       `json:"pointer,omitempty"`
		Value   *valueRecord `json:"value,omitempty"`
		Formula string       `json:"formula,omitempty"`
		Source  string       `json:"source,omitempty"`
		Sure    string       `json:"sure,omitempty"`
		Note    string       `json:"note,omitempty"`
		Missing []string     `json:"missing,omitempty"`
		Inputs  []nodeRecord `json:"inputs,omitempty"`
	}
	sceneRecord struct {
		Case       string           `json:"case"`
		Fault      string           `json:"fault"`
		Subject    string           `json:"subject"`
		Place      place            `json:"place"`
		Lasted     *valueRecord     `json:"lasted,omitempty"`
		Reason     string           `json:"reason,omitempty"`
		Missing    []string         `json:"missing,omitempty"`
		Levels     []reachedRecord  `json:"levels,omitempty"`
		Happens    []happensRecord  `json:"happens,omitempty"`
		Quantities []quantityRecord `json:"quantities,omitempty"`
	}
	reachedRecord struct {
		Vessel   string  `json:"vessel"`
		Began    float64 `json:"began"`
		Least    float64 `json:"least"`
		Greatest float64 `json:"greatest"`
		Ends     float64 `json:"ends"`
		Rim      float64 `json:"rim"`
	}
	happensRecord struct {
		What    string      `json:"what"`
		Vessel  string      `json:"vessel"`
		At      valueRecord `json:"at"`
		OrLater bool        `json:"or_later,omitempty"`
	}
	quantityRecord struct {
		Address string       `json:"address"`
		Title   string       `json:"title"`
		Value   *valueRecord `json:"value,omitempty"`
		Missing []string     `json:"missing,omitempty"`
	}
	groundRecord struct {
		How   string `json:"how"`
		About string `json:"about"`
		Text  string `json:"text"`
		Basis string `json:"basis,omitempty"`
		Place place  `json:"place"`
	}
	remarkRecord struct {
		Text  string `json:"text"`
		Place place  `json:"place"`
	}
)

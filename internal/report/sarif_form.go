package report

// The parts of SARIF 2.1.0 that are written, under the names of the standard.
type (
	sarifText struct {
		Text     string `json:"text"`
		Markdown string `json:"markdown,omitempty"`
	}
	sarifDriver struct {
		Name    string      `json:"name"`
		Version string      `json:"version,omitempty"`
		Rules   []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID      string       `json:"id"`
		Short   sarifText    `json:"shortDescription"`
		Full    sarifText    `json:"fullDescription"`
		Help    sarifText    `json:"help"`
		Default sarifLevel   `json:"defaultConfiguration"`
		Bag     sarifRuleBag `json:"properties"`
	}
	sarifLevel struct {
		Level string `json:"level"`
	}
	sarifRuleBag struct {
		Chapter  string   `json:"chapter,omitempty"`
		Strength string   `json:"strength,omitempty"`
		Safety   bool     `json:"safety"`
		Tags     []string `json:"tags,omitempty"`
	}
	sarifResult struct {
		RuleID       string             `json:"ruleId"`
		RuleIndex    int                `json:"ruleIndex"`
		Level        string             `json:"level"`
		Message      sarifText          `json:"message"`
		Locations    []sarifLocation    `json:"locations"`
		Fingerprints map[string]string  `json:"partialFingerprints"`
		Suppressions []sarifSuppression `json:"suppressions"` // in all results or in none: section 3.27.23
		Bag          *sarifResultBag    `json:"properties,omitempty"`
	}
	sarifLocation struct {
		Physical sarifPhysical  `json:"physicalLocation"`
		Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   sarifRegion   `json:"region"`
	}
	sarifArtifact struct {
		URI  string `json:"uri"`
		Base string `json:"uriBaseId,omitempty"`
	}
	sarifRegion struct {
		Line   int `json:"startLine"`
		Column int `json:"startColumn,omitempty"`
	}
	sarifLogical struct {
		Name string `json:"fullyQualifiedName"`
	}
	sarifSuppression struct {
		Kind          string         `json:"kind"`
		Status        string         `json:"status"`
		Justification string         `json:"justification"`
		Location      *sarifLocation `json:"location,omitempty"`
	}
	sarifResultBag struct {
		Verdict string   `json:"verdict"`
		Counts  bool     `json:"counts"` // it makes the exit status 1
		Value   *float64 `json:"value,omitempty"`
		Unit    string   `json:"unit,omitempty"`
		OfLimit *float64 `json:"ofLimit,omitempty"`
		House   string   `json:"house,omitempty"` // what the house changed in what it was held against
	}
	sarifNotification struct {
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations,omitempty"`
	}
	sarifInvocation struct {
		ExecutionSuccessful bool                `json:"executionSuccessful"`
		ExitCode            int                 `json:"exitCode"`
		ExitCodeDescription string              `json:"exitCodeDescription"`
		Notifications       []sarifNotification `json:"toolExecutionNotifications,omitempty"`
	}
	sarifRunBag struct {
		Book         string   `json:"book"`
		HeldTo       string   `json:"heldTo"`
		AsOf         string   `json:"asOf,omitempty"`
		House        []string `json:"house,omitempty"` // whose rules, and what they change
		HouseChanges []string `json:"houseChanges,omitempty"`
	}
)

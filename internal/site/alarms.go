package site

import (
	"slices"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

var alarmFacts = []working.FactDefinition{
	{Name: "setting", Title: "whose loop it is", Words: []string{"home", "school", "club", "farm"}, Of: "each thing that an alarm should watch"},
	yesNo("alarm_high", "whether an alarm calls when its water rises too high", "each sump"),
	yesNo("alarm_low", "whether an alarm calls when its water falls too low", "each sump"),
	yesNo("alarm_power", "whether an alarm calls when the power fails", "the mains supply"),
	yesNo("alarm_calls_away", "whether every alarm for it calls somebody who is not there, by phone or message", "each thing that an alarm should watch"),
}

var alarmSets = []working.Named{
	{Name: "sumps", Title: "sumps: vessels with that role"},
	{Name: "watched", Title: "what an alarm should watch: the sumps and the mains supply"},
}

// alarm is one entry of the list of alarms.
type alarm struct{ pointer, watches, calls string }

func (v *surveyor) alarms() {
	v.l.Put("sumps")
	v.l.Put("watched", "mains")
	var list []alarm
	for _, at := range v.Items("/alarms") {
		a := alarm{pointer: at}
		a.watches, _ = v.Word(at + "/watches").Value()
		a.calls, _ = v.Word(at + "/calls").Value()
		list = append(list, a)
	}
	for _, vessel := range v.Vessels {
		if !vessel.Role.Is("sump") {
			continue
		}
		v.l.Put("sumps", vessel.ID)
		v.l.Put("watched", vessel.ID)
		v.watched(vessel.ID, vessel.ID, list)
		v.level(vessel, "alarm_high", "above", list)
		v.level(vessel, "alarm_low", "below", list)
	}
	v.watched("mains", "power", list)
	v.known("mains", "alarm_power", slices.ContainsFunc(list, func(a alarm) bool { return a.watches == "power" }))
}

// level enters whether an alarm watches a vessel from one side.
func (v *surveyor) level(vessel *system.Vessel, name, side string, list []alarm) {
	v.known(vessel.ID, name, slices.ContainsFunc(list, func(a alarm) bool {
		at := v.Word(a.pointer + "/" + side)
		_, given := at.Value()
		return a.watches == vessel.ID && given
	}))
}

// known enters a yes or no that follows from the list of alarms, if there is one.
func (v *surveyor) known(subject, name string, yes bool) {
	word := "no"
	switch {
	case yes:
		word = "yes"
	case !v.Document.Has("/alarms"):
		word = ""
	}
	v.fact(subject, name, "/alarms", word, "/alarms")
}

// watched enters what is said of all alarms for one thing.
func (v *surveyor) watched(subject, name string, list []alarm) {
	v.word(subject, "setting", v.Site.Setting)
	away, unsaid, some := true, []string{}, false
	for _, a := range list {
		if a.watches != name {
			continue
		}
		some = true
		switch a.calls {
		case "phone", "message":
		case "":
			unsaid = append(unsaid, a.pointer+"/calls")
		default:
			away = false
		}
	}
	switch {
	case !away:
		v.fact(subject, "alarm_calls_away", "/alarms", "no")
	case len(unsaid) > 0:
		v.fact(subject, "alarm_calls_away", "/alarms", "", unsaid...)
	default:
		v.known(subject, "alarm_calls_away", some)
	}
}

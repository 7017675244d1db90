package main

import (
	"errors"
	"strconv"
	"time"
)

// day is an option that takes a day of the calendar.
type day string

func (d *day) String() string { return string(*d) }
func (d *day) Type() string   { return "date" }

func (d *day) Set(text string) error {
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		return errors.New("a day, year first, such as 2026-03-14")
	}
	*d = day(text)
	return nil
}

// today is the day on which permits are held: the one that was asked for, else that of
// SOURCE_DATE_EPOCH (seconds since 1970, so that a build can be repeated), else that of the clock.
func (a *app) today(asOf string) (string, error) {
	if asOf != "" {
		return asOf, nil
	}
	if text := a.env("SOURCE_DATE_EPOCH"); text != "" {
		seconds, err := strconv.ParseInt(text, 10, 64)
		at := time.Unix(seconds, 0).UTC()
		if err != nil || at.Year() < 1970 || at.Year() > 9999 {
			return "", misusef("SOURCE_DATE_EPOCH cannot be `%s`: it is a whole number of seconds since 1970", text)
		}
		return at.Format(time.DateOnly), nil
	}
	return time.Now().Format(time.DateOnly), nil
}

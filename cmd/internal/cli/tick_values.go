package cli

import (
	"errors"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"quiltrun/planner"
)

// pedalKeys are the keys with names that foot pedals are known to type.
var pedalKeys = []string{
	"space", "enter", "tab", "up", "down", "right", "home", "end", "pgup", "pgdown", "insert", "delete",
	"f1", "f2", "f3", "f4", "f5", "f6", "f7", "f8", "f9", "f10", "f11", "f12",
}

// keyValue is the option --key: a key that checks off.
type keyValue struct{ to *[]string }

// String and Type are what help shows: no default, and a word for the value.
func (v keyValue) String() string { return "" }
func (v keyValue) Type() string   { return "KEY" }

// Set takes a letter, a sign or the name of a key. Digits make numbers, and esc
// clears them.
func (v keyValue) Set(text string) error {
	one := utf8.RuneCountInString(text) == 1 && utf8.ValidString(text) && text > " "
	if name := strings.ToLower(text); !one && slices.Contains(pedalKeys, name) {
		text, one = name, true
	}
	switch {
	case !one:
		return wrong("--key %q is no key", text).hint("write a letter or sign as the pedal types it, or one of %s", strings.Join(pedalKeys, ", "))
	case strings.Contains("0123456789", text):
		return wrong("--key %s: digits make the number that is checked off", text).hint("have the pedal type a letter")
	}
	*v.to = append(*v.to, text)
	return nil
}

// apartValue is the option --apart.
type apartValue struct{ to *time.Duration }

func (v apartValue) String() string { return "" }
func (v apartValue) Type() string   { return "TIME" }

// Set reads the time.
func (v apartValue) Set(text string) error {
	minutes, err := parseSpan(text, mostApart)
	var reason *spanError
	switch {
	case !errors.As(err, &reason):
		*v.to = time.Duration(minutes * planner.Minutes(time.Minute))
		return err
	case reason.over:
		return wrong("--apart %q is more than 5 seconds", text).hint("keys that are held begin to repeat within a second; 0.7s is usual")
	}
	return wrong("--apart %s", reason.what).hint("write it like 0.7s")
}

package cli

import (
	"bytes"
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
)

// tabRequest is the first word of the call that a completion script makes at a
// press of Tab: then the shell, and the line (bash, with the signs at which it breaks
// words) or its words.
const tabRequest = "__words"

// runTab answers a press of Tab: a line of flags, then a candidate a line as the
// shell takes it. Whatever is wrong, there is nothing to offer and nothing is said.
func runTab(env *Env, args []string) error {
	if len(args) == 0 {
		return nil
	}
	shell, words := args[0], args[1:]
	breaks := ""
	if shell == "bash" {
		if len(words) != 2 {
			return nil
		}
		breaks = words[1]
		if words = rawWords(words[0]); len(words) > 0 {
			words = words[1:]
		}
	}
	if len(words) == 0 {
		return nil
	}
	last := words[len(words)-1]
	offers, directive := env.offers(typedWords(shell, words))
	fmt.Fprintln(env.Out, strings.Join(tabFlags(directive), " "))
	if directive&(cobra.ShellCompDirectiveFilterFileExt|cobra.ShellCompDirectiveFilterDirs) != 0 {
		return nil
	}
	begun, _ := unquoted(last)
	if _, value, with := strings.Cut(begun, "="); with && strings.HasPrefix(begun, "-") {
		begun = value
	}
	for _, offer := range offers {
		if strings.HasPrefix(offer, begun) {
			fmt.Fprintln(env.Out, tabLine(shell, offer, last, breaks))
		}
	}
	return nil
}

// typedWords is the words without their quotes. fish has taken them off all but
// the one at the cursor.
func typedWords(shell string, raw []string) []string {
	words := slices.Clone(raw)
	for i := range words {
		if shell != "fish" || i == len(words)-1 {
			words[i], _ = unquoted(words[i])
		}
	}
	return words
}

// offers is what the command tree has to offer for the last of the words, each
// with its description behind a tab where it has one.
func (e *Env) offers(words []string) ([]string, cobra.ShellCompDirective) {
	var out, unheard bytes.Buffer
	asking := *e
	asking.Out, asking.Err = &out, &unheard
	root := newRoot(&asking)
	completeFlags(root, &asking)
	root.SetArgs(append([]string{cobra.ShellCompRequestCmd}, words...))
	if err := root.ExecuteContext(context.Background()); err != nil {
		return nil, noFiles
	}
	lines := strings.Split(strings.TrimRight(out.String(), "\n"), "\n")
	last := len(lines) - 1
	directive, err := strconv.Atoi(strings.TrimPrefix(lines[last], ":"))
	if err != nil || directive&int(cobra.ShellCompDirectiveError) != 0 {
		return nil, noFiles
	}
	return lines[:last], cobra.ShellCompDirective(directive)
}

// tabFlags is a directive in words that every shell's script can tell.
func tabFlags(directive cobra.ShellCompDirective) []string {
	var flags []string
	for _, f := range []struct {
		bit  cobra.ShellCompDirective
		word string
	}{
		{cobra.ShellCompDirectiveNoSpace, "nospace"},
		{cobra.ShellCompDirectiveKeepOrder, "nosort"},
		{cobra.ShellCompDirectiveFilterFileExt, "files"},
		{cobra.ShellCompDirectiveFilterDirs, "dirs"},
	} {
		if directive&f.bit != 0 {
			flags = append(flags, f.word)
		}
	}
	return flags
}

// tabLine is one candidate as a shell takes it. Behind --option= zsh and fish want
// the option again.
func tabLine(shell, offer, raw, breaks string) string {
	word, about, _ := strings.Cut(offer, "\t")
	if shell == "bash" {
		return bashReply(word, raw, breaks)
	}
	if option, _, with := strings.Cut(raw, "="); with && strings.HasPrefix(raw, "-") {
		word = option + "=" + word
	}
	if shell == "zsh" {
		word = strings.NewReplacer(`\`, `\\`, ":", `\:`).Replace(word)
		if about != "" {
			word += ":" + about
		}
		return word
	}
	if about != "" {
		word += "\t" + about
	}
	return word
}

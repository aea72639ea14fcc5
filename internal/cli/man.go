package cli

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// man prints manual pages made of the commands' own help.
func (c *call) man() *cobra.Command {
	return &cobra.Command{
		Use:                   "man [COMMAND]",
		DisableFlagsInUseLine: true,
		Short:                 "Print the manual page of the program, or of a command",
		Long: `man prints a manual page in the form that the man command reads, made of the same words as the help of the
command. To keep one: flitchlay man check > flitchlay-check.1`,
		Example: `  flitchlay man check | man -l -`,
		Args:    cobra.MaximumNArgs(1),
		ValidArgsFunction: func(cmd *cobra.Command, _ []string, _ string) ([]string, cobra.ShellCompDirective) {
			var names []string
			for _, sub := range cmd.Root().Commands() {
				names = append(names, sub.Name())
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			of := cmd.Root()
			if len(args) == 1 {
				found, rest, err := of.Find(args)
				if err != nil || len(rest) > 0 || found == of {
					return fmt.Errorf("there is no command %q", args[0])
				}
				of = found
			}
			c.out.Write(manual(of))
			return nil
		},
	}
}

// roff keeps a text from being read as a request, and its hyphens as they are.
var roff = strings.NewReplacer(`\`, `\e`, "-", `\-`, "\n.", "\n\\&.", "\n'", "\n\\&'")

// manual is the page of a command.
func manual(cmd *cobra.Command) []byte {
	var b bytes.Buffer
	name := strings.ReplaceAll(cmd.CommandPath(), " ", "-")
	section := func(title, text string) {
		if text = strings.Trim(text, "\n"); text != "" {
			fmt.Fprintf(&b, ".SH %s\n.nf\n%s\n.fi\n", title, roff.Replace("\n" + text)[1:])
		}
	}
	fmt.Fprintf(&b, ".TH %s 1 \"\" \"flitchlay %s\"\n.SH NAME\n%s \\- %s\n", strings.ToUpper(name), version, roff.Replace(name), roff.Replace(cmd.Short))
	section("SYNOPSIS", cmd.UseLine())
	section("DESCRIPTION", cmd.Long)
	section("OPTIONS", cmd.Flags().FlagUsages())
	var commands strings.Builder
	for _, sub := range cmd.Commands() {
		if sub.IsAvailableCommand() {
			fmt.Fprintf(&commands, "%-10s %s\n", sub.Name(), sub.Short)
		}
	}
	section("COMMANDS", commands.String())
	section("EXAMPLES", cmd.Example)
	return b.Bytes()
}

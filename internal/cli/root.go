package cli

import (
	"bytes"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// version is the program's own; a build from a work tree adds where it stands.
const version = "0.1.0"

// commands are all commands, in the order of the help.
var commands = []func(*call) *cobra.Command{
	(*call).newRoom,
	(*call).check,
	(*call).layout,
	(*call).draw,
	(*call).viewing,
	(*call).compare,
	(*call).count,
	(*call).climate,
	(*call).diff,
	(*call).keys,
	(*call).schema,
	(*call).version,
	(*call).man,
}

// root is the command without a name: it only knows the others.
func (c *call) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "flitchlay",
		Short: "Lay out and draw real-wood-veneer wallcovering",
		Long: `flitchlay lays out real-wood-veneer wallcovering, sheets of one flitch hung in number order.
From a room file it finds every seam, sheet, wrap and cut, says what rules are not met, and draws
dimensioned sets for the architect and for the crew.

Exit status: 0 all rules that must be met are met; 1 one is not (drawings are still written and say
NOT FOR HANGING); 2 the room file or the command line cannot be used; 3 output was not written.`,
		Example: `  flitchlay new -o dining.toml
  flitchlay check dining.toml
  flitchlay draw dining.toml`,
		Version:               built(),
		SilenceUsage:          true,
		SilenceErrors:         true,
		DisableFlagsInUseLine: true,
	}
	root.SetVersionTemplate("flitchlay {{.Version}}\n")
	root.SetIn(c.in)
	root.SetOut(c.out)
	root.SetErr(c.messages)
	root.SuggestionsMinimumDistance = 2
	help := root.HelpFunc()
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) {
		var text bytes.Buffer
		cmd.SetOut(&text)
		help(cmd, args)
		c.screen().paragraphs(text.String())
	})
	cobra.EnableCommandSorting = false
	for _, make := range commands {
		root.AddCommand(make(c))
	}
	return root
}

// built is the version, with the revision the program was built from where that is known.
func built() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return version
	}
	revision, changed := "", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision" && len(s.Value) >= 12:
			revision = " (" + s.Value[:12]
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = ", changed"
		}
	}
	if revision == "" {
		return version
	}
	return version + revision + changed + ")"
}

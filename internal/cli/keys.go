package cli

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/job"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// keysHead stands over the keys as Markdown.
const keysHead = `# Every key of a room file

Written by ` + "`flitchlay keys --markdown`" + ` from the list that rooms are read by. Lengths are texts such as "12' 6 3/8", or
numbers in the units of ` + "`[project]`" + `; where two figures stand, the second is that of a metric room.
`

// jobHead stands over the keys that only a job file has.
const jobHead = `
# Every key of a job file

A job file has these tables, [[flitch]] as above, and what its rooms share: ` + "`[project]`, `[veneer]`, `[rules]`, `[page]`, `[paste]`, `[primer]`, `[site]` and `[day]`" + `
as above, where a key that a room has itself wins.
`

// keys explains the keys of a room file.
func (c *call) keys() *cobra.Command {
	var markdown, page bool
	cmd := &cobra.Command{
		Use:                   "keys [TABLE] [--page] [--markdown]",
		DisableFlagsInUseLine: true,
		Short:                 "Explain every key of a room file, of a job file, or of a page template",
		Long: `keys says of every key of a room file and of a job file what it means, what it takes, what holds without it, and how it is
written. With the name of a table, such as wall or wall.opening, it explains the keys of that one. With --page
it explains those of a page template.

Tables: ` + strings.Join(room.Schema.Paths(), ", ") + `;
of a job file ` + strings.Join(job.Own().Paths(), ", ") + `.`,
		Example: `  flitchlay keys wall.opening
  flitchlay keys --markdown > keys.md`,
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return append(room.Schema.Paths(), "job"), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			schema, jobs, more := room.Schema, job.Own(), room.RuleOf
			if page {
				schema, jobs, more = paper.Schema, nil, func(string, string) string { return "" }
			}
			if len(args) == 1 {
				if schema, jobs = only(schema, args[0]), only(jobs, args[0]); len(schema)+len(jobs) == 0 {
					return noTable(append(room.Schema.Paths(), "job"), args[0], page)
				}
			}
			var out bytes.Buffer
			if markdown {
				if !page {
					out.WriteString(keysHead)
				}
				schema.WriteMarkdown(&out, more)
				if len(args) == 0 && !page {
					out.WriteString(jobHead)
				}
				jobs.WriteMarkdown(&out, more)
			} else {
				schema.WriteText(&out, more)
				if len(schema) > 0 && len(jobs) > 0 {
					out.WriteString("\nof a job file:\n\n")
				}
				jobs.WriteText(&out, more)
				c.screen().prose("%s", out.String())
				return nil
			}
			c.out.Write(out.Bytes())
			return nil
		},
	}
	cmd.Flags().BoolVar(&markdown, "markdown", false, "as Markdown")
	cmd.Flags().BoolVar(&page, "page", false, "the keys of a page template")
	return cmd
}

// only is the table of a path, in brackets or without.
func only(schema source.Schema, name string) source.Schema {
	if t, ok := schema.Table(strings.Trim(name, "[] ")); ok && t.Path != "" {
		return source.Schema{t}
	}
	return nil
}

// noTable says that there is no such table.
//
// Errors: one sentence that names the nearest.
func noTable(paths []string, name string, page bool) error {
	if page {
		paths = paper.Schema.Paths()
	}
	if near := source.Nearest(strings.Trim(name, "[] "), paths); near != "" {
		return fmt.Errorf("there is no table %q; the nearest is %s", name, near)
	}
	return fmt.Errorf("there is no table %q; there are %s", name, strings.Join(paths, ", "))
}

// schema prints the schema by which editors complete and check.
func (c *call) schema() *cobra.Command {
	var to string
	cmd := &cobra.Command{
		Use:                   "schema [room | job | page] [-o FILE]",
		DisableFlagsInUseLine: true,
		Short:                 "Print the JSON Schema by which an editor completes and checks a room file, a job file or a page template",
		Long: `schema prints a JSON Schema (draft 7) of room files, of job files, or of page templates, by which editors of TOML complete
keys, explain them and mark what is wrong. Starters begin with the line that such editors look for: write the
schema beside the room under the name that stands there, ` + schemaNames["room"] + ` or ` + schemaNames["page"] + `.

What an editor lets pass may still be a mistake: check finds all of them.`,
		Example:   `  flitchlay schema -o ` + schemaNames["room"],
		Args:      cobra.MaximumNArgs(1),
		ValidArgs: []string{"room", "job", "page"},
		RunE: func(cmd *cobra.Command, args []string) error {
			what := "room"
			if len(args) == 1 {
				what = args[0]
			}
			var text []byte
			switch what {
			case "room":
				text = room.Schema.JSON("flitchlay room", "project", "veneer", "wall")
			case "job":
				text = job.Schema.JSON("flitchlay job", "room")
			case "page":
				text = paper.Schema.JSON("flitchlay page template", "paper")
			default:
				return fmt.Errorf("there is no schema %q; there are room, job, page", what)
			}
			if !cmd.Flags().Changed("output") {
				c.out.Write(text)
				return nil
			}
			if err := ending("-o", to, ".json"); err != nil {
				return err
			}
			if err := c.put(filepath.Dir(to), "schema", []file{{name: filepath.Base(to), data: text}}); err != nil {
				return err
			}
			c.say("wrote %s", to)
			return nil
		},
	}
	cmd.Flags().StringVarP(&to, "output", "o", "", "the file to write; without it the schema goes to standard output")
	c.forcing(cmd)
	return cmd
}

// schemaNames are the files by which starters name their schemas.
var schemaNames = map[string]string{"room": "flitchlay-room.json", "job": "flitchlay-job.json", "page": "flitchlay-page.json"}

// editorLine is the first line of a starter, which tells an editor where the schema stands.
func editorLine(what string) string { return "#:schema " + schemaNames[what] + "\n" }

// version prints the version.
func (c *call) version() *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version",
		Long:    "version prints what --version prints: the program's version, and the revision that it was built from.",
		Example: "  flitchlay version > built-with.txt",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			fmt.Fprintf(c.out, "flitchlay %s\n", built())
			return nil
		},
	}
}

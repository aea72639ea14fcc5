package cli

import (
	"fmt"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/climate"
	"flitchlay/internal/length"
	"flitchlay/internal/submittal"
	"flitchlay/internal/svg"
	"flitchlay/internal/wood"
)

// climateFlags is what the command line says about a climate.
type climateFlags struct {
	species, cut, width, long, from, to, wall, year, chart string
	list                                                   bool
}

// climate tells what moisture does to sheets.
func (c *call) climate() *cobra.Command {
	var f climateFlags
	cmd := &cobra.Command{
		Use:                   `climate [ROOM] [--from CLIMATE] [--to CLIMATE] [--species NAME] [--cut CUT] [--width LENGTH]`,
		DisableFlagsInUseLine: true,
		Short:                 "Tell moisture, free movement and dew point of shop and site",
		Long: `climate tells what moisture content wood comes to in the shop and on the site, how far one sheet wants
to move between them (free, an upper bound: paste holds it), what the room's year does, how near the
wall is to the dew point, and how long sheets have to lie in the room. What a room file says is taken
from it; options go before it. --list names the species and what each moves by, for every cut.

A CLIMATE is a temperature and a relative humidity: "70 F 35 %" or "21 C 35 %".
ROOM is a room file, a PDF set drawn from one, or - for standard input.`,
		Example: `  flitchlay climate --species walnut --cut plain --width "24" --from "70 F 30 %" --to "70 F 50 %"
  flitchlay climate dining.toml --wall "58 F" --chart moisture.svg`,
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if f.list {
				return climate.SpeciesTable().Write(c.screen())
			}
			if cmd.Flags().Changed("chart") {
				if err := ending("--chart", f.chart, ".svg"); err != nil {
					return err
				}
			}
			k, err := c.climateOf(args, &f)
			if err != nil {
				return err
			}
			return c.tellClimate(k, &f)
		},
	}
	flags := cmd.Flags()
	flags.BoolVar(&f.list, "list", false, "list species and what they move by")
	flags.StringVar(&f.species, "species", "", "the wood")
	flags.StringVar(&f.cut, "cut", "", "how its leaves were cut: plain, quarter, rift")
	flags.StringVar(&f.width, "width", "", "width of a sheet")
	flags.StringVar(&f.long, "length", "", "length of a sheet")
	flags.StringVar(&f.from, "from", "", "climate of the shop")
	flags.StringVar(&f.to, "to", "", "climate of the site")
	flags.StringVar(&f.wall, "wall", "", `temperature of the wall's own face: "58 F"`)
	flags.StringVar(&f.year, "year", "", `the room's relative humidity over the year: "30-55 %"`)
	flags.StringVar(&f.chart, "chart", "", "an SVG file to draw the chart of moisture over humidity into")
	c.forcing(cmd)
	cmd.RegisterFlagCompletionFunc("cut", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return cuts, cobra.ShellCompDirectiveNoFileComp
	})
	cmd.RegisterFlagCompletionFunc("species", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		var names []string
		for _, s := range wood.All() {
			names = append(names, s.Name())
		}
		return names, cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

var cuts = []string{string(wood.Plain), string(wood.Quarter), string(wood.Rift)}

// climateOf puts what the options say over what the room says.
func (c *call) climateOf(args []string, f *climateFlags) (*climate.Conditions, error) {
	k := &climate.Conditions{Low: wood.RoomHumidity.Low, High: wood.RoomHumidity.High}
	if len(args) == 1 {
		r, err := c.read(args[0])
		if err != nil {
			return nil, err
		}
		if f.species != "" {
			r.Veneer.Species = "" // the option's counts
		}
		if k, err = climate.Of(r); err != nil {
			return nil, err
		}
	}
	if err := f.sheet(k); err != nil {
		return nil, err
	}
	if err := f.air(k); err != nil {
		return nil, err
	}
	if k.Shop == nil && k.Site == nil {
		return nil, fmt.Errorf(`no climate is given: --to "68 F 45 %%", or [site] in a room file; --list names the species`)
	}
	if k.Wall != nil && k.Site == nil {
		return nil, fmt.Errorf("--wall needs the climate of the site: --to")
	}
	return k, nil
}

// sheet puts what the options say of the sheets over what is known.
func (f *climateFlags) sheet(k *climate.Conditions) (err error) {
	if f.species != "" {
		if k.Species, err = climate.FindSpecies(f.species); err != nil {
			return err
		}
	}
	if f.cut != "" {
		if !slices.Contains(cuts, f.cut) {
			return fmt.Errorf("there is no cut %q; there are %s", f.cut, strings.Join(cuts, ", "))
		}
		k.Cut = wood.Cut(f.cut)
	}
	for _, x := range []struct {
		flag, text string
		to         *length.Length
	}{{"width", f.width, &k.Width}, {"length", f.long, &k.Length}} {
		if x.text == "" {
			continue
		}
		if *x.to, err = length.Parse(x.text, k.Style.Unit); err != nil {
			return fmt.Errorf("--%s %q: %w", x.flag, x.text, err)
		}
		if *x.to <= 0 {
			return fmt.Errorf("--%s %q is no size of a sheet", x.flag, x.text)
		}
	}
	return nil
}

// air puts what the options say of climates over what is known.
func (f *climateFlags) air(k *climate.Conditions) (err error) {
	if f.from != "" {
		if k.Shop, err = parseClimate("from", f.from); err != nil {
			return err
		}
	}
	if f.to != "" {
		if k.Site, err = parseClimate("to", f.to); err != nil {
			return err
		}
	}
	if f.wall != "" {
		t, rest, ok := parseTemperature(f.wall)
		if !ok || strings.TrimSpace(rest) != "" {
			return fmt.Errorf(`--wall %q is no temperature; write "58 F" or "14 C"`, f.wall)
		}
		k.Wall = &t
	}
	if f.year != "" {
		if k.Low, k.High, err = parseYear(f.year); err != nil {
			return err
		}
		k.YearGiven = true
	}
	return nil
}

// tellClimate prints and draws.
func (c *call) tellClimate(k *climate.Conditions, f *climateFlags) error {
	var chart []byte
	if f.chart != "" {
		var states []submittal.State
		metric := k.Style.Unit == length.Millimetres
		if k.Shop != nil {
			states = append(states, submittal.State{Name: "shop", Climate: *k.Shop, Metric: metric})
		}
		if k.Site != nil {
			states = append(states, submittal.State{Name: "site", Climate: *k.Site, Metric: metric})
		}
		var err error
		if chart, err = svg.Page(submittal.MoisturePage(states), svg.Options{}); err != nil {
			return err
		}
	}
	to := c.screen()
	for _, line := range k.Lines() {
		to.prose("%s\n", line)
	}
	var list []said
	for _, r := range climate.Findings(k.Room()) {
		list = append(list, said{level: r.Level, code: string(r.Code), message: r.Message})
	}
	to.said(list)
	if f.chart == "" {
		return nil
	}
	if err := c.put(filepath.Dir(f.chart), "climate", []file{{name: filepath.Base(f.chart), data: chart}}); err != nil {
		return err
	}
	c.say("wrote %s", f.chart)
	return nil
}

// temperature is a figure with its scale at the start of a text.
var temperature = regexp.MustCompile(`^\s*([-+−]?\d+(?:[.,]\d+)?)\s*(?:°|º|deg|degrees)?\s*([FfCc])\b`)

// humidity is a figure with a per cent sign, which may be left out.
var humidity = regexp.MustCompile(`^[\s,;/]*(\d+(?:[.,]\d+)?)\s*%?\s*(?:[Rr][Hh])?\s*$`)

func decimal(text string) float64 {
	f, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(text), 64)
	if err != nil {
		return math.NaN()
	}
	return f
}

// parseTemperature reads a temperature in degrees F from the start of a text.
func parseTemperature(text string) (degrees float64, rest string, ok bool) {
	m := temperature.FindStringSubmatch(text)
	if m == nil {
		return 0, text, false
	}
	t := decimal(m[1])
	if strings.EqualFold(m[2], "c") {
		t = wood.Fahrenheit(t)
	}
	return t, text[len(m[0]):], t >= -40 && t <= 200
}

// parseClimate reads a temperature and a relative humidity.
func parseClimate(flag, text string) (*wood.Climate, error) {
	t, rest, ok := parseTemperature(text)
	m := humidity.FindStringSubmatch(rest)
	if !ok || m == nil {
		return nil, fmt.Errorf(`--%s %q is no climate; write "70 F 35 %%" or "21 C 35 %%"`, flag, text)
	}
	h := decimal(m[1])
	if !(h >= 0 && h <= 100) {
		return nil, fmt.Errorf("--%s %q: a relative humidity is between 0 and 100 %%", flag, text)
	}
	return &wood.Climate{Temperature: t, Humidity: h}, nil
}

// span is two figures with a hyphen between.
var span = regexp.MustCompile(`^\s*(\d+(?:[.,]\d+)?)\s*%?\s*(?:-|–|to)\s*(\d+(?:[.,]\d+)?)\s*%?\s*$`)

func parseYear(text string) (low, high float64, err error) {
	m := span.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, fmt.Errorf(`--year %q is no band of humidity; write "30-55 %%"`, text)
	}
	low, high = decimal(m[1]), decimal(m[2])
	if low >= high || high > 100 {
		return 0, 0, fmt.Errorf("--year %q: the humidity goes from a lower to a higher figure, at most 100 %%", text)
	}
	return low, high, nil
}

package wood

// Coefficient is a dimensional change coefficient: the share that a width changes by for each per cent of moisture.
type Coefficient struct {
	Value  float64
	Status Status
}

// Species is one species as the tables give it.
type Species struct {
	Names                                           []string // the trade name first
	Radial, Tangential                              Coefficient
	ShrinksRadial, ShrinksTangential, ShrinksVolume float64 // from green to ovendry, per cent; 0 where it is not given
	Shrinks                                         Status
	ShrinkageTable                                  string // of the Wood Handbook, or empty
}

// Name is the trade name.
func (s Species) Name() string { return s.Names[0] }

// Status is how well the coefficient for a cut is known: the less sure of those that it is made of.
func (s Species) Status(cut Cut) Status {
	switch cut {
	case Quarter:
		return s.Radial.Status
	case Rift:
		return max(s.Radial.Status, s.Tangential.Status)
	}
	return s.Tangential.Status
}

// species is the table: names, radial and tangential coefficient, shrinkage.
//
// Source: coefficients from the Wood Handbook, FPL-GTR-190 (2010), Table 13-5; shrinkage from its Table 4-3 for
// domestic and Table 4-4 for imported woods; the status says for each how it was come by. Computed coefficients are
// CoefficientOf the shrinkage. The coefficients of both oaks are the handbook's commercial blends, their shrinkage is
// white oak's and northern red oak's. Hickory's shrinkage is mockernut's; pignut's is 7.2, 11.5, 17.9. The two tables
// disagree on both mahoganies: the coefficients, which are larger, are kept. Names are common practice, no source.
var species = []Species{
	{[]string{"white oak", "American white oak", "white oak, commercial"}, Coefficient{0.00180, Read}, Coefficient{0.00365, Read}, 5.6, 10.5, 16.3, Read, "4-3"},
	{[]string{"red oak", "American red oak", "northern red oak", "red oak, commercial"}, Coefficient{0.00158, Read}, Coefficient{0.00369, Read}, 4.0, 8.6, 13.7, Memory, "4-3"},
	{[]string{"walnut", "black walnut", "American walnut", "American black walnut"}, Coefficient{0.00190, Read}, Coefficient{0.00274, Read}, 5.5, 7.8, 12.8, Read, "4-3"},
	{[]string{"hard maple", "sugar maple"}, Coefficient{0.00165, Read}, Coefficient{0.00353, Read}, 4.8, 9.9, 14.7, Memory, "4-3"},
	{[]string{"soft maple", "red maple"}, Coefficient{0.00137, Read}, Coefficient{0.00289, Read}, 4.0, 8.2, 12.6, Memory, "4-3"},
	{[]string{"cherry", "black cherry", "American cherry", "American black cherry"}, Coefficient{0.00126, Read}, Coefficient{0.00248, Read}, 3.7, 7.1, 11.5, Read, "4-3"},
	{[]string{"white ash", "ash", "American ash", "American white ash"}, Coefficient{0.00169, Read}, Coefficient{0.00274, Read}, 4.9, 7.8, 13.3, Read, "4-3"},
	{[]string{"yellow birch"}, Coefficient{0.00256, Read}, Coefficient{0.00338, Read}, 7.3, 9.5, 16.8, Read, "4-3"},
	{[]string{"paper birch"}, Coefficient{0.00219, Read}, Coefficient{0.00304, Read}, 6.3, 8.6, 16.2, Read, "4-3"},
	{[]string{"beech", "American beech"}, Coefficient{0.00190, Read}, Coefficient{0.00431, Read}, 5.5, 11.9, 17.2, Read, "4-3"},
	{[]string{"pecan", "pecan hickory"}, Coefficient{0.00169, Read}, Coefficient{0.00315, Read}, 4.9, 8.9, 13.6, Read, "4-3"},
	{[]string{"hickory", "true hickory", "mockernut hickory"}, Coefficient{0.00259, Memory}, Coefficient{0.00411, Restated}, 7.7, 11.0, 17.8, Read, "4-3"},
	{[]string{"sycamore", "American sycamore"}, Coefficient{0.00172, Read}, Coefficient{0.00296, Read}, 5.0, 8.4, 14.1, Read, "4-3"},
	{[]string{"sweetgum", "red gum"}, Coefficient{0.00183, Read}, Coefficient{0.00365, Read}, 5.3, 10.2, 15.8, Read, "4-3"},
	{[]string{"elm", "American elm"}, Coefficient{0.00144, Read}, Coefficient{0.00338, Read}, 4.2, 9.5, 14.6, Read, "4-3"},
	{[]string{"red alder", "alder"}, Coefficient{0.00151, Read}, Coefficient{0.00256, Read}, 4.4, 7.3, 12.6, Read, "4-3"},
	{[]string{"basswood", "American basswood"}, Coefficient{0.00230, Read}, Coefficient{0.00330, Read}, 6.6, 9.3, 15.8, Read, "4-3"},
	{[]string{"butternut"}, Coefficient{0.00116, Read}, Coefficient{0.00223, Read}, 3.4, 6.4, 10.6, Read, "4-3"},
	{[]string{"chestnut", "American chestnut"}, Coefficient{0.00116, Read}, Coefficient{0.00234, Read}, 3.4, 6.7, 11.6, Read, "4-3"},
	{[]string{"yellow-poplar", "poplar", "tulip poplar"}, Coefficient{0.00158, Computed}, Coefficient{0.00289, Computed}, 4.6, 8.2, 12.7, Read, "4-3"},
	{[]string{"Douglas-fir", "coast Douglas-fir"}, Coefficient{0.00165, Computed}, Coefficient{0.00267, Restated}, 4.8, 7.6, 12.4, Read, "4-3"},
	{[]string{"mahogany", "true mahogany", "American mahogany"}, Coefficient{0.00172, Memory}, Coefficient{0.00238, Memory}, 3.0, 4.1, 7.8, Read, "4-4"},
	{[]string{"African mahogany", "khaya"}, Coefficient{0.00141, Memory}, Coefficient{0.00201, Memory}, 2.5, 4.5, 8.8, Read, "4-4"},
	{[]string{"teak"}, Coefficient{0.00101, Memory}, Coefficient{0.00186, Restated}, 2.5, 5.8, 7.0, Memory, "4-4"},
	{[]string{"sapele"}, Coefficient{0.00158, Computed}, Coefficient{0.00259, Computed}, 4.6, 7.4, 14.0, Memory, "4-4"},
	{[]string{"limba"}, Coefficient{0.00155, Computed}, Coefficient{0.00216, Computed}, 4.5, 6.2, 10.8, Read, "4-4"},
	{[]string{"avodire"}, Coefficient{0.00158, Computed}, Coefficient{0.00234, Computed}, 4.6, 6.7, 12.0, Read, "4-4"},
	{[]string{"afrormosia"}, Coefficient{0.00102, Computed}, Coefficient{0.00223, Computed}, 3.0, 6.4, 10.7, Read, "4-4"},
	{[]string{"European walnut", "French walnut", "English walnut"}, Coefficient{0.00148, Memory}, Coefficient{0.00223, Memory}, 4.3, 6.4, 0, Memory, ""},
}

// All are the species of the table, in its order.
func All() []Species {
	all := make([]Species, len(species))
	copy(all, species)
	return all
}

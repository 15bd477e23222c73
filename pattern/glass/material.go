package glass

// Material is a kind of glass.
type Material struct {
	Name    string
	Density float64 // g/cm³
}

// Materials lists the kinds that a job can name. The first is taken where a job
// names none. The densities of the crystals are the lowest at which Directive
// 69/493/EEC, annex I, allows the name (read in the Danish order on crystal glass,
// annex 1), so a blank weighs this or a little more. That of soda-lime is common
// practice: published tables run from 2.4 to 2.53.
func Materials() []Material {
	return []Material{
		{"soda-lime", 2.50},
		{"crystal", 2.45},
		{"lead crystal", 2.90},
		{"full lead crystal", 3.00},
	}
}

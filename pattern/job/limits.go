package job

// limits reads the limits that are given over those in l.
func (s section) limits(l *Limits) {
	s.only(keysOf("limits"))
	for _, one := range []struct {
		key    string
		into   *float64
		within span
	}{
		{"land", &l.Land, span{0, maxDepth, 0.8}},
		{"leave", &l.Leave, span{0, maxDepth, 1.6}},
		{"rim", &l.Rim, span{0, maxAcross, 9.5}},
		{"foot", &l.Foot, span{0, maxAcross, 6.4}},
		{"edge", &l.Edge, span{0, maxAcross, 3.2}},
		{"polish", &l.Polish, span{0, maxPolish, 0.4}},
	} {
		if mm, ok := s.optional(one.key).length(one.within); ok {
			*one.into = mm
		}
	}
	if share, ok := s.optional("clear").within(span{0, 1, 0.5}); ok {
		l.Clear = share
	}
	if share, ok := s.optional("reach").within(span{0, 1, 0.5}); ok {
		l.Reach = share
	}
}

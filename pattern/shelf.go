package pattern

// shelf keeps what was made for a key through the next layout that doesn't ask for
// it, and no longer: it never holds more than two layouts are made of.
type shelf[K comparable, V any] struct{ now, last, before map[K]V }

// get returns what there is for a key, and keeps it on.
func (s *shelf[K, V]) get(key K) (V, bool) {
	if v, ok := s.now[key]; ok {
		return v, true
	}
	for _, older := range []map[K]V{s.last, s.before} {
		if v, ok := older[key]; ok {
			s.put(key, v)
			return v, true
		}
	}
	var none V
	return none, false
}

func (s *shelf[K, V]) put(key K, v V) {
	if s.now == nil {
		s.now = map[K]V{}
	}
	s.now[key] = v
}

// finish ends a layout. Of one that came to nothing, whatever it made goes: so a value
// that is half typed, or a run that is cancelled, costs nothing of what was there.
func (s *shelf[K, V]) finish(done bool) {
	if done {
		s.last, s.before = s.now, s.last
	}
	s.now = nil
}

package pattern

// shelf keeps values by key for as long as one of the last two layouts asked for them.
type shelf[K comparable, V any] struct{ now, last, before map[K]V }

// get returns the value of a key, and keeps it for the layouts to come.
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

// finish ends a layout. What a failed layout made is dropped, and what was there before
// stays: so a value half typed, or a cancelled run, loses nothing.
func (s *shelf[K, V]) finish(done bool) {
	if done {
		s.last, s.before = s.now, s.last
	}
	s.now = nil
}

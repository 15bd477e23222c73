package groove_test
import ("testing";"math/rand/v2";"roundlay/pattern/groove")
func TestZZ(t *testing.T) {
		rnd := rand.New(rand.NewPCG(uint64(groove.Gang), uint64(100_000+34)))
		s := randomTurning(rnd, groove.Gang)
		t.Log(s)
		s.told(0)
}

//go:build amd64 && !purego

package avx

// Has reports whether processor and operating system offer AVX2 and FMA: the
// feature bits of CPUID leaves 1 and 7, and in XCR0 the state of the XMM and YMM
// registers (Intel 64 and IA-32 Architectures Software Developer's Manual, volume
// 1, chapter 14, from memory).
func Has() bool {
	const fma, osxsave, avx, avx2, ymmState = 1 << 12, 1 << 27, 1 << 28, 1 << 5, 6
	top, _, _, _ := cpuid(0, 0)
	if top < 7 {
		return false
	}
	_, _, c, _ := cpuid(1, 0)
	if want := uint32(fma | osxsave | avx); c&want != want {
		return false
	}
	_, b, _, _ := cpuid(7, 0)
	return b&avx2 != 0 && xgetbv()&ymmState == ymmState
}

func cpuid(leaf, sub uint32) (a, b, c, d uint32)

func xgetbv() uint32

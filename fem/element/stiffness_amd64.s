//go:build amd64 && !purego

#include "textflag.h"

// A row of 18 freedoms is four registers of four and one of two.

// FIRST sets the row in Y0..Y4 to the number at c times the row at r.
#define FIRST(c, r) \
	VBROADCASTSD c(BX), Y10    \
	VMULPD r(SI), Y10, Y0      \
	VMULPD r+32(SI), Y10, Y1   \
	VMULPD r+64(SI), Y10, Y2   \
	VMULPD r+96(SI), Y10, Y3   \
	VMULPD r+128(SI), X10, X4

// NEXT adds the number at c times the row at r.
#define NEXT(c, r) \
	VBROADCASTSD c(BX), Y10    \
	VMULPD r(SI), Y10, Y11     \
	VADDPD Y11, Y0, Y0         \
	VMULPD r+32(SI), Y10, Y12  \
	VADDPD Y12, Y1, Y1         \
	VMULPD r+64(SI), Y10, Y13  \
	VADDPD Y13, Y2, Y2         \
	VMULPD r+96(SI), Y10, Y14  \
	VADDPD Y14, Y3, Y3         \
	VMULPD r+128(SI), X10, X15 \
	VADDPD X15, X4, X4

// KEEP writes the row.
#define KEEP(r) \
	VMOVUPD Y0, r(DX)    \
	VMOVUPD Y1, r+32(DX) \
	VMOVUPD Y2, r+64(DX) \
	VMOVUPD Y3, r+96(DX) \
	VMOVUPD X4, r+128(DX)

// func forcesAVX2(t, rows *[12][18]float64, c *laws)
TEXT ·forcesAVX2(SB), NOSPLIT, $0-24
	MOVQ t+0(FP), DX
	MOVQ rows+8(FP), SI
	MOVQ c+16(FP), BX
	FIRST(0, 0)
	NEXT(8, 144)
	NEXT(16, 288)
	NEXT(24, 432)
	NEXT(32, 576)
	KEEP(0)
	FIRST(40, 0)
	NEXT(48, 144)
	NEXT(56, 288)
	NEXT(64, 432)
	NEXT(72, 576)
	KEEP(144)
	FIRST(80, 0)
	NEXT(88, 144)
	NEXT(96, 288)
	NEXT(104, 432)
	NEXT(112, 576)
	KEEP(288)
	FIRST(120, 0)
	NEXT(128, 144)
	NEXT(136, 288)
	NEXT(144, 432)
	NEXT(152, 576)
	KEEP(432)
	FIRST(160, 0)
	NEXT(168, 144)
	NEXT(176, 288)
	NEXT(184, 432)
	NEXT(192, 576)
	KEEP(576)
	FIRST(200, 720)
	NEXT(208, 864)
	NEXT(216, 1008)
	KEEP(720)
	FIRST(224, 720)
	NEXT(232, 864)
	NEXT(240, 1008)
	KEEP(864)
	FIRST(248, 720)
	NEXT(256, 864)
	NEXT(264, 1008)
	KEEP(1008)
	FIRST(272, 1152)
	NEXT(280, 1296)
	NEXT(288, 1440)
	KEEP(1152)
	FIRST(296, 1152)
	NEXT(304, 1296)
	NEXT(312, 1440)
	KEEP(1296)
	FIRST(320, 1152)
	NEXT(328, 1296)
	NEXT(336, 1440)
	KEEP(1440)
	FIRST(344, 1584)
	KEEP(1584)
	VZEROUPPER
	RET

// FIRST4 sets a and b to the products of two freedoms, in Y10 and Y11, with the four forces at o; NEXT4
// adds them. FIRST2 and NEXT2 do it with two forces.
#define FIRST4(o, a, b) \
	VMOVUPD o(DX), Y12 \
	VMULPD Y12, Y10, a \
	VMULPD Y12, Y11, b

#define NEXT4(o, a, b) \
	VMOVUPD o(DX), Y12 \
	VMULPD Y12, Y10, Y13 \
	VADDPD Y13, a, a \
	VMULPD Y12, Y11, Y14 \
	VADDPD Y14, b, b

#define FIRST2(o, a, b) \
	VMOVUPD o(DX), X12 \
	VMULPD X12, X10, a \
	VMULPD X12, X11, b

#define NEXT2(o, a, b) \
	VMOVUPD o(DX), X12 \
	VMULPD X12, X10, X13 \
	VADDPD X13, a, a \
	VMULPD X12, X11, X14 \
	VADDPD X14, b, b

// FREEDOMS takes two freedoms of the row at r.
#define FREEDOMS(r) \
	VBROADCASTSD r(SI), Y10 \
	VBROADCASTSD r+8(SI), Y11

// FIRSTWHOLE and NEXTWHOLE sum the products of the row at r, of two freedoms of the first node,
// with all of the forces: Y0..Y4 and Y5..Y9.
#define FIRSTWHOLE(r) \
	FREEDOMS(r) \
	FIRST4(r, Y0, Y5) \
	FIRST4(r+32, Y1, Y6) \
	FIRST4(r+64, Y2, Y7) \
	FIRST4(r+96, Y3, Y8) \
	FIRST2(r+128, X4, X9)

#define NEXTWHOLE(r) \
	FREEDOMS(r) \
	NEXT4(r, Y0, Y5) \
	NEXT4(r+32, Y1, Y6) \
	NEXT4(r+64, Y2, Y7) \
	NEXT4(r+96, Y3, Y8) \
	NEXT2(r+128, X4, X9)

// FIRSTLATER and NEXTLATER do it for two freedoms of the second node, with those from it on.
#define FIRSTLATER(r) \
	FREEDOMS(r) \
	FIRST4(r+48, Y0, Y5) \
	FIRST4(r+80, Y1, Y6) \
	FIRST4(r+112, Y2, Y7)

#define NEXTLATER(r) \
	FREEDOMS(r) \
	NEXT4(r+48, Y0, Y5) \
	NEXT4(r+80, Y1, Y6) \
	NEXT4(r+112, Y2, Y7)

// FIRSTLAST and NEXTLAST do it for two freedoms of the third node, with its own.
#define FIRSTLAST(r) \
	FREEDOMS(r) \
	FIRST4(r+96, Y0, Y5) \
	FIRST2(r+128, X1, X6)

#define NEXTLAST(r) \
	FREEDOMS(r) \
	NEXT4(r+96, Y0, Y5) \
	NEXT2(r+128, X1, X6)

// func productAVX2(k *[324]float64, rows, t *[12][18]float64)
TEXT ·productAVX2(SB), NOSPLIT, $0-24
	MOVQ k+0(FP), DI
	MOVQ rows+8(FP), SI
	MOVQ t+16(FP), DX
	MOVQ $3, CX

whole:
	FIRSTWHOLE(0)
	NEXTWHOLE(144)
	NEXTWHOLE(288)
	NEXTWHOLE(432)
	NEXTWHOLE(576)
	NEXTWHOLE(720)
	NEXTWHOLE(1152)
	NEXTWHOLE(864)
	NEXTWHOLE(1296)
	NEXTWHOLE(1008)
	NEXTWHOLE(1440)
	NEXTWHOLE(1584)
	VMOVUPD Y0, (DI)
	VMOVUPD Y1, 32(DI)
	VMOVUPD Y2, 64(DI)
	VMOVUPD Y3, 96(DI)
	VMOVUPD X4, 128(DI)
	VMOVUPD Y5, 144(DI)
	VMOVUPD Y6, 176(DI)
	VMOVUPD Y7, 208(DI)
	VMOVUPD Y8, 240(DI)
	VMOVUPD X9, 272(DI)
	ADDQ $16, SI
	ADDQ $288, DI
	DECQ CX
	JNZ  whole
	MOVQ $3, CX

later:
	FIRSTLATER(0)
	NEXTLATER(144)
	NEXTLATER(288)
	NEXTLATER(432)
	NEXTLATER(576)
	NEXTLATER(720)
	NEXTLATER(1152)
	NEXTLATER(864)
	NEXTLATER(1296)
	NEXTLATER(1008)
	NEXTLATER(1440)
	NEXTLATER(1584)
	VMOVUPD Y0, 48(DI)
	VMOVUPD Y1, 80(DI)
	VMOVUPD Y2, 112(DI)
	VMOVUPD Y5, 192(DI)
	VMOVUPD Y6, 224(DI)
	VMOVUPD Y7, 256(DI)
	ADDQ $16, SI
	ADDQ $288, DI
	DECQ CX
	JNZ  later
	MOVQ $3, CX

last:
	FIRSTLAST(0)
	NEXTLAST(144)
	NEXTLAST(288)
	NEXTLAST(432)
	NEXTLAST(576)
	NEXTLAST(720)
	NEXTLAST(1152)
	NEXTLAST(864)
	NEXTLAST(1296)
	NEXTLAST(1008)
	NEXTLAST(1440)
	NEXTLAST(1584)
	VMOVUPD Y0, 96(DI)
	VMOVUPD X1, 128(DI)
	VMOVUPD Y5, 240(DI)
	VMOVUPD X6, 272(DI)
	ADDQ $16, SI
	ADDQ $288, DI
	DECQ CX
	JNZ  last
	VZEROUPPER
	RET

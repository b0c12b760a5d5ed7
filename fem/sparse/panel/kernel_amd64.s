//go:build amd64 && !purego

#include "textflag.h"

// A tile of 8 rows x 6 columns lives in Y4..Y15: column s in Y(4+2s), rows 0..3,
// and Y(5+2s), rows 4..7.

#define LOADTILE \
	VMOVUPD (DI), Y4     \
	VMOVUPD 32(DI), Y5   \
	VMOVUPD 64(DI), Y6   \
	VMOVUPD 96(DI), Y7   \
	VMOVUPD 128(DI), Y8  \
	VMOVUPD 160(DI), Y9  \
	VMOVUPD 192(DI), Y10 \
	VMOVUPD 224(DI), Y11 \
	VMOVUPD 256(DI), Y12 \
	VMOVUPD 288(DI), Y13 \
	VMOVUPD 320(DI), Y14 \
	VMOVUPD 352(DI), Y15

#define ZEROTILE \
	VXORPD Y4, Y4, Y4    \
	VXORPD Y5, Y5, Y5    \
	VXORPD Y6, Y6, Y6    \
	VXORPD Y7, Y7, Y7    \
	VXORPD Y8, Y8, Y8    \
	VXORPD Y9, Y9, Y9    \
	VXORPD Y10, Y10, Y10 \
	VXORPD Y11, Y11, Y11 \
	VXORPD Y12, Y12, Y12 \
	VXORPD Y13, Y13, Y13 \
	VXORPD Y14, Y14, Y14 \
	VXORPD Y15, Y15, Y15

#define STORETILE \
	VMOVUPD Y4, (DI)     \
	VMOVUPD Y5, 32(DI)   \
	VMOVUPD Y6, 64(DI)   \
	VMOVUPD Y7, 96(DI)   \
	VMOVUPD Y8, 128(DI)  \
	VMOVUPD Y9, 160(DI)  \
	VMOVUPD Y10, 192(DI) \
	VMOVUPD Y11, 224(DI) \
	VMOVUPD Y12, 256(DI) \
	VMOVUPD Y13, 288(DI) \
	VMOVUPD Y14, 320(DI) \
	VMOVUPD Y15, 352(DI)

// STEP subtracts column d bytes beyond CX: panel at SI, row pairs at R10, R11, R12.
#define STEP(d) \
	VMOVUPD      d(SI)(CX*1), Y0      \
	VMOVUPD      d+32(SI)(CX*1), Y1   \
	VBROADCASTSD d(R10)(CX*1), Y2     \
	VBROADCASTSD d+8(R10)(CX*1), Y3   \
	VFNMADD231PD Y0, Y2, Y4           \
	VFNMADD231PD Y1, Y2, Y5           \
	VFNMADD231PD Y0, Y3, Y6           \
	VFNMADD231PD Y1, Y3, Y7           \
	VBROADCASTSD d(R11)(CX*1), Y2     \
	VBROADCASTSD d+8(R11)(CX*1), Y3   \
	VFNMADD231PD Y0, Y2, Y8           \
	VFNMADD231PD Y1, Y2, Y9           \
	VFNMADD231PD Y0, Y3, Y10          \
	VFNMADD231PD Y1, Y3, Y11          \
	VBROADCASTSD d(R12)(CX*1), Y2     \
	VBROADCASTSD d+8(R12)(CX*1), Y3   \
	VFNMADD231PD Y0, Y2, Y12          \
	VFNMADD231PD Y1, Y2, Y13          \
	VFNMADD231PD Y0, Y3, Y14          \
	VFNMADD231PD Y1, Y3, Y15

// ROWS turns the three offsets at R8 into addresses and moves on.
#define ROWS \
	MOVLQSX (R8), R10          \
	MOVLQSX 4(R8), R11         \
	MOVLQSX 8(R8), R12         \
	LEAQ    (BX)(R10*8), R10   \
	LEAQ    (BX)(R11*8), R11   \
	LEAQ    (BX)(R12*8), R12   \
	ADDQ    $12, R8

// PIVOT scales the column (x, y) by the reciprocal pivot at t(R13).
#define PIVOT(t, x, y) \
	VBROADCASTSD t(R13), Y2 \
	VMULPD       Y2, x, x   \
	VMULPD       Y2, y, y

// ELIM subtracts t(R13) times the column (x, y) from the column (u, v).
#define ELIM(t, x, y, u, v) \
	VBROADCASTSD t(R13), Y3  \
	VFNMADD231PD x, Y3, u    \
	VFNMADD231PD y, Y3, v

// TRSM solves X Lᵀ = C; entry (j, l) of L is at 8(6j+l)(R13).
#define TRSM \
	PIVOT(0, Y4, Y5)              \
	ELIM(48, Y4, Y5, Y6, Y7)      \
	ELIM(96, Y4, Y5, Y8, Y9)      \
	ELIM(144, Y4, Y5, Y10, Y11)   \
	ELIM(192, Y4, Y5, Y12, Y13)   \
	ELIM(240, Y4, Y5, Y14, Y15)   \
	PIVOT(56, Y6, Y7)             \
	ELIM(104, Y6, Y7, Y8, Y9)     \
	ELIM(152, Y6, Y7, Y10, Y11)   \
	ELIM(200, Y6, Y7, Y12, Y13)   \
	ELIM(248, Y6, Y7, Y14, Y15)   \
	PIVOT(112, Y8, Y9)            \
	ELIM(160, Y8, Y9, Y10, Y11)   \
	ELIM(208, Y8, Y9, Y12, Y13)   \
	ELIM(256, Y8, Y9, Y14, Y15)   \
	PIVOT(168, Y10, Y11)          \
	ELIM(216, Y10, Y11, Y12, Y13) \
	ELIM(264, Y10, Y11, Y14, Y15) \
	PIVOT(224, Y12, Y13)          \
	ELIM(272, Y12, Y13, Y14, Y15) \
	PIVOT(280, Y14, Y15)

// TRSMT solves X L = C.
#define TRSMT \
	PIVOT(280, Y14, Y15)          \
	ELIM(272, Y14, Y15, Y12, Y13) \
	ELIM(264, Y14, Y15, Y10, Y11) \
	ELIM(256, Y14, Y15, Y8, Y9)   \
	ELIM(248, Y14, Y15, Y6, Y7)   \
	ELIM(240, Y14, Y15, Y4, Y5)   \
	PIVOT(224, Y12, Y13)          \
	ELIM(216, Y12, Y13, Y10, Y11) \
	ELIM(208, Y12, Y13, Y8, Y9)   \
	ELIM(200, Y12, Y13, Y6, Y7)   \
	ELIM(192, Y12, Y13, Y4, Y5)   \
	PIVOT(168, Y10, Y11)          \
	ELIM(160, Y10, Y11, Y8, Y9)   \
	ELIM(152, Y10, Y11, Y6, Y7)   \
	ELIM(144, Y10, Y11, Y4, Y5)   \
	PIVOT(112, Y8, Y9)            \
	ELIM(104, Y8, Y9, Y6, Y7)     \
	ELIM(96, Y8, Y9, Y4, Y5)      \
	PIVOT(56, Y6, Y7)             \
	ELIM(48, Y6, Y7, Y4, Y5)      \
	PIVOT(0, Y4, Y5)

// func gemmAVX2(c, a, b []float64, off []int32)
TEXT ·gemmAVX2(SB), NOSPLIT, $0-96
	MOVQ c_base+0(FP), DI
	MOVQ a_base+24(FP), SI
	MOVQ a_len+32(FP), DX
	MOVQ b_base+48(FP), BX
	MOVQ off_base+72(FP), R8
	MOVQ off_len+80(FP), R9
	SHLQ $3, DX
	ADDQ DX, SI
	ADDQ DX, BX
	NEGQ DX

gemmtile:
	SUBQ $3, R9
	JLT  gemmdone
	ROWS
	LOADTILE
	MOVQ DX, CX

gemmloop:
	STEP(0)
	STEP(64)
	ADDQ $128, CX
	JLT  gemmloop
	STORETILE
	ADDQ $384, DI
	JMP  gemmtile

gemmdone:
	VZEROUPPER
	RET

// func gemm0AVX2(c, a, b []float64, off []int32)
TEXT ·gemm0AVX2(SB), NOSPLIT, $0-96
	MOVQ c_base+0(FP), DI
	MOVQ a_base+24(FP), SI
	MOVQ a_len+32(FP), DX
	MOVQ b_base+48(FP), BX
	MOVQ off_base+72(FP), R8
	MOVQ off_len+80(FP), R9
	SHLQ $3, DX
	ADDQ DX, SI
	ADDQ DX, BX
	NEGQ DX

gemm0tile:
	SUBQ $3, R9
	JLT  gemm0done
	ROWS
	ZEROTILE
	MOVQ DX, CX

gemm0loop:
	STEP(0)
	STEP(64)
	ADDQ $128, CX
	JLT  gemm0loop
	STORETILE
	ADDQ $384, DI
	JMP  gemm0tile

gemm0done:
	VZEROUPPER
	RET

// func solveAVX2(a, b []float64, off []int32, tri []float64)
TEXT ·solveAVX2(SB), NOSPLIT, $0-96
	MOVQ a_base+0(FP), SI
	MOVQ b_base+24(FP), BX
	MOVQ off_base+48(FP), R8
	MOVQ off_len+56(FP), R9
	MOVQ tri_base+72(FP), R13
	MOVQ SI, DI
	XORQ DX, DX

solvetile:
	SUBQ  $3, R9
	JLT   solvedone
	ROWS
	LOADTILE
	XORQ  CX, CX
	TESTQ DX, DX
	JEQ   solvetri

solveloop:
	STEP(0)
	STEP(64)
	ADDQ $128, CX
	CMPQ CX, DX
	JLT  solveloop

solvetri:
	TRSM
	STORETILE
	ADDQ $384, DI
	ADDQ $384, DX
	ADDQ $288, R13
	JMP  solvetile

solvedone:
	VZEROUPPER
	RET

// func trsmAVX2(c, tri []float64)
TEXT ·trsmAVX2(SB), NOSPLIT, $0-48
	MOVQ c_base+0(FP), DI
	MOVQ tri_base+24(FP), R13
	LOADTILE
	TRSM
	STORETILE
	VZEROUPPER
	RET

// func trsmtAVX2(c, tri []float64)
TEXT ·trsmtAVX2(SB), NOSPLIT, $0-48
	MOVQ c_base+0(FP), DI
	MOVQ tri_base+24(FP), R13
	LOADTILE
	TRSMT
	STORETILE
	VZEROUPPER
	RET

// BACK subtracts row i of the eight rows at SI times column entries i of the six
// columns at BX.
#define BACK(i) \
	VMOVUPD      (64*i)(SI), Y0      \
	VMOVUPD      (64*i+32)(SI), Y1   \
	VBROADCASTSD (8*i)(BX), Y2       \
	VBROADCASTSD (8*i+64)(BX), Y3    \
	VFNMADD231PD Y0, Y2, Y4          \
	VFNMADD231PD Y1, Y2, Y5          \
	VFNMADD231PD Y0, Y3, Y6          \
	VFNMADD231PD Y1, Y3, Y7          \
	VBROADCASTSD (8*i+128)(BX), Y2   \
	VBROADCASTSD (8*i+192)(BX), Y3   \
	VFNMADD231PD Y0, Y2, Y8          \
	VFNMADD231PD Y1, Y2, Y9          \
	VFNMADD231PD Y0, Y3, Y10         \
	VFNMADD231PD Y1, Y3, Y11         \
	VBROADCASTSD (8*i+256)(BX), Y2   \
	VBROADCASTSD (8*i+320)(BX), Y3   \
	VFNMADD231PD Y0, Y2, Y12         \
	VFNMADD231PD Y1, Y2, Y13         \
	VFNMADD231PD Y0, Y3, Y14         \
	VFNMADD231PD Y1, Y3, Y15

// func gemmtAVX2(c, a, s []float64, stride int)
TEXT ·gemmtAVX2(SB), NOSPLIT, $0-80
	MOVQ c_base+0(FP), DI
	MOVQ c_len+8(FP), R9
	MOVQ a_base+24(FP), R10
	MOVQ a_len+32(FP), R11
	MOVQ s_base+48(FP), R12
	MOVQ stride+72(FP), DX
	SHLQ $3, DX

backtile:
	SUBQ $48, R9
	JLT  backdone
	LOADTILE
	MOVQ R10, SI
	MOVQ R12, BX
	MOVQ R11, CX

backpanel:
	BACK(0)
	BACK(1)
	BACK(2)
	BACK(3)
	BACK(4)
	BACK(5)
	BACK(6)
	BACK(7)
	ADDQ $512, SI
	ADDQ DX, BX
	SUBQ $64, CX
	JGT  backpanel
	STORETILE
	ADDQ $384, DI
	ADDQ $384, R12
	JMP  backtile

backdone:
	VZEROUPPER
	RET

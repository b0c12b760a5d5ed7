//go:build amd64 && !purego

#include "textflag.h"

// func gemvAVX2(y, a, x []float64)
TEXT ·gemvAVX2(SB), NOSPLIT, $0-72
	MOVQ   y_base+0(FP), DI
	MOVQ   a_base+24(FP), SI
	MOVQ   x_base+48(FP), BX
	MOVQ   x_len+56(FP), CX
	VXORPD Y4, Y4, Y4
	VXORPD Y5, Y5, Y5
	VXORPD Y6, Y6, Y6
	VXORPD Y7, Y7, Y7
	VXORPD Y8, Y8, Y8
	VXORPD Y9, Y9, Y9
	VXORPD Y10, Y10, Y10
	VXORPD Y11, Y11, Y11

gemvfour:
	SUBQ         $4, CX
	JLT          gemvrest
	VBROADCASTSD (BX), Y0
	VBROADCASTSD 8(BX), Y1
	VBROADCASTSD 16(BX), Y2
	VBROADCASTSD 24(BX), Y3
	VFMADD231PD  (SI), Y0, Y4
	VFMADD231PD  32(SI), Y0, Y5
	VFMADD231PD  64(SI), Y1, Y6
	VFMADD231PD  96(SI), Y1, Y7
	VFMADD231PD  128(SI), Y2, Y8
	VFMADD231PD  160(SI), Y2, Y9
	VFMADD231PD  192(SI), Y3, Y10
	VFMADD231PD  224(SI), Y3, Y11
	ADDQ         $256, SI
	ADDQ         $32, BX
	JMP          gemvfour

gemvrest:
	ADDQ $4, CX

gemvone:
	SUBQ         $1, CX
	JLT          gemvsum
	VBROADCASTSD (BX), Y0
	VFMADD231PD  (SI), Y0, Y4
	VFMADD231PD  32(SI), Y0, Y5
	ADDQ         $64, SI
	ADDQ         $8, BX
	JMP          gemvone

gemvsum:
	VADDPD  Y6, Y4, Y4
	VADDPD  Y7, Y5, Y5
	VADDPD  Y10, Y8, Y8
	VADDPD  Y11, Y9, Y9
	VADDPD  Y8, Y4, Y4
	VADDPD  Y9, Y5, Y5
	VMOVUPD (DI), Y0
	VMOVUPD 32(DI), Y1
	VSUBPD  Y4, Y0, Y0
	VSUBPD  Y5, Y1, Y1
	VMOVUPD Y0, (DI)
	VMOVUPD Y1, 32(DI)
	VZEROUPPER
	RET

// func gemvtAVX2(x, a, y []float64)
TEXT ·gemvtAVX2(SB), NOSPLIT, $0-72
	MOVQ    x_base+0(FP), DI
	MOVQ    x_len+8(FP), CX
	MOVQ    a_base+24(FP), SI
	MOVQ    y_base+48(FP), BX
	VMOVUPD (BX), Y0
	VMOVUPD 32(BX), Y1

gemvtfour:
	SUBQ        $4, CX
	JLT         gemvtrest
	VMULPD      (SI), Y0, Y4
	VMULPD      64(SI), Y0, Y5
	VMULPD      128(SI), Y0, Y6
	VMULPD      192(SI), Y0, Y7
	VFMADD231PD 32(SI), Y1, Y4
	VFMADD231PD 96(SI), Y1, Y5
	VFMADD231PD 160(SI), Y1, Y6
	VFMADD231PD 224(SI), Y1, Y7
	VHADDPD     Y5, Y4, Y8
	VHADDPD     Y7, Y6, Y9
	VPERM2F128  $0x21, Y9, Y8, Y10
	VBLENDPD    $0x0C, Y9, Y8, Y11
	VADDPD      Y10, Y11, Y11
	VMOVUPD     (DI), Y2
	VSUBPD      Y11, Y2, Y2
	VMOVUPD     Y2, (DI)
	ADDQ        $256, SI
	ADDQ        $32, DI
	JMP         gemvtfour

gemvtrest:
	ADDQ $4, CX

gemvtone:
	SUBQ         $1, CX
	JLT          gemvtdone
	VMULPD       (SI), Y0, Y4
	VFMADD231PD  32(SI), Y1, Y4
	VEXTRACTF128 $1, Y4, X5
	VADDPD       X5, X4, X4
	VHADDPD      X4, X4, X4
	VMOVSD       (DI), X2
	VSUBSD       X4, X2, X2
	VMOVSD       X2, (DI)
	ADDQ         $64, SI
	ADDQ         $8, DI
	JMP          gemvtone

gemvtdone:
	VZEROUPPER
	RET

// func addPairsAVX2(dst, src []float64)
TEXT ·addPairsAVX2(SB), NOSPLIT, $0-48
	MOVQ dst_base+0(FP), DI
	MOVQ dst_len+8(FP), CX
	MOVQ src_base+24(FP), SI

pairloop:
	VMOVUPD (SI), X0
	VADDPD  (DI), X0, X0
	VMOVUPD X0, (DI)
	ADDQ    $64, SI
	ADDQ    $64, DI
	SUBQ    $8, CX
	JGT     pairloop
	RET

// func addPanelAVX2(d0, d1, d2, d3 *float64, src []float64)
TEXT ·addPanelAVX2(SB), NOSPLIT, $0-56
	MOVQ d0+0(FP), R8
	MOVQ d1+8(FP), R9
	MOVQ d2+16(FP), R10
	MOVQ d3+24(FP), R11
	MOVQ src_base+32(FP), SI
	MOVQ src_len+40(FP), CX
	SHLQ $3, CX
	ADDQ CX, SI
	ADDQ CX, R8
	ADDQ CX, R9
	ADDQ CX, R10
	ADDQ CX, R11
	NEGQ CX

	// Neighbours in memory go together: pairs 0 1 and 2 3, or 1 2.
	LEAQ 16(R8), AX
	LEAQ 16(R10), BX
	LEAQ 16(R9), DX
	CMPQ AX, R9
	JNE  panelodd
	CMPQ BX, R11
	JEQ  panelhalves

panelodd:
	CMPQ DX, R10
	JEQ  panelmiddle

panelpairs:
	VMOVUPD (SI)(CX*1), X0
	VMOVUPD 16(SI)(CX*1), X1
	VMOVUPD 32(SI)(CX*1), X2
	VMOVUPD 48(SI)(CX*1), X3
	VADDPD  (R8)(CX*1), X0, X0
	VADDPD  (R9)(CX*1), X1, X1
	VADDPD  (R10)(CX*1), X2, X2
	VADDPD  (R11)(CX*1), X3, X3
	VMOVUPD X0, (R8)(CX*1)
	VMOVUPD X1, (R9)(CX*1)
	VMOVUPD X2, (R10)(CX*1)
	VMOVUPD X3, (R11)(CX*1)
	ADDQ    $64, CX
	JLT     panelpairs
	RET

panelhalves:
	VMOVUPD (SI)(CX*1), Y0
	VMOVUPD 32(SI)(CX*1), Y1
	VADDPD  (R8)(CX*1), Y0, Y0
	VADDPD  (R10)(CX*1), Y1, Y1
	VMOVUPD Y0, (R8)(CX*1)
	VMOVUPD Y1, (R10)(CX*1)
	ADDQ    $64, CX
	JLT     panelhalves
	VZEROUPPER
	RET

panelmiddle:
	VMOVUPD (SI)(CX*1), X0
	VMOVUPD 16(SI)(CX*1), Y1
	VMOVUPD 48(SI)(CX*1), X3
	VADDPD  (R8)(CX*1), X0, X0
	VADDPD  (R9)(CX*1), Y1, Y1
	VADDPD  (R11)(CX*1), X3, X3
	VMOVUPD X0, (R8)(CX*1)
	VMOVUPD Y1, (R9)(CX*1)
	VMOVUPD X3, (R11)(CX*1)
	ADDQ    $64, CX
	JLT     panelmiddle
	VZEROUPPER
	RET

// func prefetchAVX2(a []float64)
TEXT ·prefetchAVX2(SB), NOSPLIT, $0-24
	MOVQ a_base+0(FP), SI
	MOVQ a_len+8(FP), CX

fetch:
	SUBQ       $8, CX
	JLT        fetched
	PREFETCHT0 (SI)
	ADDQ       $64, SI
	JMP        fetch

fetched:
	RET

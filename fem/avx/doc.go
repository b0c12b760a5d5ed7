// Package avx tells whether the processor has the vector instructions that the kernels in
// assembly are written in. Asking takes microseconds on a virtual machine: ask once.
package avx

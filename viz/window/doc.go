// Package window shows a desk.Frame: in a window of the screen, or as a
// picture without one. It is the only package of this module that needs C.
//
// A Painter draws a Frame with OpenGL 3.3 (core, forward-compatible). Each
// view goes through a buffer with four samples to a pixel, or through none
// while the hand moves; the flat panels are laid over the resolved picture,
// pixel for pixel, so that text stays sharp. Colours are sRGB bytes from the
// colour map to the screen; nothing is converted on the way.
//
// A context comes from a window (Run), from EGL without a display server
// (Offscreen), or from a window that stays hidden. Where none can be had,
// Picture falls back to the software painters of packages scene and panel.
//
// Built without C, the package has the same functions: Run says what is
// missing, Picture paints in software.
package window

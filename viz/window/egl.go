//go:build cgo && linux

package window

/*
#cgo LDFLAGS: -ldl
#include <dlfcn.h>
#include <stdint.h>
#include <stdlib.h>

// The few names of EGL 1.5 that are needed, so that its headers are not.
typedef void *(*proc_address)(const char *);
typedef void *(*platform_display)(unsigned, void *, const intptr_t *);
typedef unsigned (*initialize)(void *, int *, int *);
typedef unsigned (*bind_api)(unsigned);
typedef void *(*create_context)(void *, void *, void *, const int *);
typedef unsigned (*make_current)(void *, void *, void *, void *);
typedef unsigned (*destroy_context)(void *, void *);
typedef unsigned (*query_devices)(int, void **, int *);

struct egl {
	void *display, *context;
	proc_address get;
	make_current current;
	destroy_context destroy;
};

// egl_display opens a display without a screen: Mesa's surfaceless platform
// (EGL_MESA_platform_surfaceless), else a graphics card (EGL_EXT_platform_device), as
// drivers that are not Mesa's have it. It returns which step failed, 0 for none.
static int egl_display(struct egl *e, initialize init) {
	platform_display display = (platform_display)e->get("eglGetPlatformDisplay");
	query_devices query = (query_devices)e->get("eglQueryDevicesEXT");
	void *cards[8];
	int n = 0;
	if (!display) return 2;
	e->display = display(0x31DD, 0, 0); // EGL_PLATFORM_SURFACELESS_MESA
	if (e->display && init(e->display, 0, 0)) return 0;
	if (query && !query(8, cards, &n)) n = 0;
	for (int i = 0; i < n; i++) {
		void *card = display(0x313F, cards[i], 0); // EGL_PLATFORM_DEVICE_EXT
		if (!card) continue;
		e->display = card;
		if (init(card, 0, 0)) return 0;
	}
	return e->display ? 4 : 3;
}

// egl_open opens an OpenGL 3.3 core context without a surface. It returns which step
// failed, 0 for none. The library stays loaded: OpenGL's functions live in it.
static int egl_open(struct egl *e, const char *library) {
	static const int want[] = {
		0x3098, 3, 0x30FB, 3, // EGL_CONTEXT_MAJOR_VERSION, EGL_CONTEXT_MINOR_VERSION
		0x30FD, 1,            // EGL_CONTEXT_OPENGL_PROFILE_MASK: core
		0x31B1, 1,            // EGL_CONTEXT_OPENGL_FORWARD_COMPATIBLE: yes
		0x3038};              // EGL_NONE
	void *lib = dlopen(library, RTLD_LAZY | RTLD_GLOBAL);
	if (!lib) return 1;
	e->get = (proc_address)dlsym(lib, "eglGetProcAddress");
	initialize init = (initialize)dlsym(lib, "eglInitialize");
	bind_api bind = (bind_api)dlsym(lib, "eglBindAPI");
	create_context create = (create_context)dlsym(lib, "eglCreateContext");
	e->current = (make_current)dlsym(lib, "eglMakeCurrent");
	e->destroy = (destroy_context)dlsym(lib, "eglDestroyContext");
	if (!e->get || !init || !bind || !create || !e->current || !e->destroy) return 2;
	int step = egl_display(e, init);
	if (step) return step;
	if (!bind(0x30A2)) return 5; // EGL_OPENGL_API
	e->context = create(e->display, 0, 0, want);
	if (!e->context) return 5;
	return e->current(e->display, 0, 0, e->context) ? 0 : 6;
}

static void *egl_get(struct egl *e, const char *name) { return e->get(name); }

static void egl_close(struct egl *e) {
	e->current(e->display, 0, 0, 0);
	e->destroy(e->display, e->context);
}
*/
import "C"

import (
	"fmt"
	"runtime"
	"unsafe"

	"github.com/go-gl/gl/v3.3-core/gl"
)

// eglLibrary is the name under which every Linux ships EGL.
const eglLibrary = "libEGL.so.1"

// Offscreen opens a context that needs no display server. It binds the
// calling goroutine to its thread until Close; a Painter made with the
// context is used on that goroutine only.
func Offscreen() (*Context, error) { return offscreen(eglLibrary) }

// eglStep says what a failure of egl_open means.
func eglStep(step C.int) string {
	switch step {
	case 1:
		return "%s is not there; install the Debian packages libegl1 and libgl1-mesa-dri, or what your system calls Mesa's EGL"
	case 2:
		return "%s is not EGL 1.5; install a current Mesa (Debian: libegl1)"
	case 3:
		return "%s knows no drawing without a surface; install Mesa (Debian: libegl1 libgl1-mesa-dri)"
	case 4:
		return "%s finds no driver; install Mesa's (Debian: libgl1-mesa-dri)"
	case 5:
		return "%s has no OpenGL 3.3 core; install a current Mesa driver (Debian: libgl1-mesa-dri)"
	}
	return "%s cannot use a context without a surface; install Mesa (Debian: libegl1 libgl1-mesa-dri)"
}

// offscreen is Offscreen with the name of the library.
func offscreen(library string) (*Context, error) {
	runtime.LockOSThread()
	name := C.CString(library)
	defer C.free(unsafe.Pointer(name))
	e := (*C.struct_egl)(C.calloc(1, C.sizeof_struct_egl))
	give := func() {
		if e.context != nil {
			C.egl_close(e)
		}
		C.free(unsafe.Pointer(e))
		runtime.UnlockOSThread()
	}
	if step := C.egl_open(e, name); step != 0 {
		give()
		return nil, fmt.Errorf("no off-screen OpenGL: "+eglStep(step), library)
	}
	err := gl.InitWithProcAddrFunc(func(fn string) unsafe.Pointer {
		c := C.CString(fn)
		defer C.free(unsafe.Pointer(c))
		return C.egl_get(e, c)
	})
	if err != nil {
		give()
		return nil, fmt.Errorf("no off-screen OpenGL: %s lacks a function of OpenGL 3.3: %w", library, err)
	}
	return &Context{how: "OpenGL off-screen (EGL)", close: give}, nil
}

package main

import (
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
)

//go:embed driver
var drivers embed.FS

// needed are the Debian packages of the general libraries.
const needed = "gcc libc6-dev libsuitesparse-dev libopenblas-dev libarpack2-dev"

// buildDriver compiles a driver of the general libraries in a folder.
func buildDriver(dir, name string) (string, error) {
	for _, file := range []string{"common.h", name + ".c"} {
		text, err := drivers.ReadFile("driver/" + file)
		if err != nil {
			return "", err
		}
		if err := os.WriteFile(filepath.Join(dir, file), text, 0o600); err != nil {
			return "", err
		}
	}
	program := filepath.Join(dir, name)
	out, err := exec.Command("gcc", "-O3", "-march=native", "-o", program, program+".c", "-larpack", "-lopenblas", "-lcholmod", "-lsuitesparseconfig", "-lm").CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("the driver of the general library does not build; it wants the Debian packages %s%s\n%s", needed, missing(), out)
	}
	return program, nil
}

// missing names the packages that are not there, where dpkg can tell.
func missing() string {
	var list []string
	for _, name := range strings.Fields(needed) {
		out, err := exec.Command("dpkg-query", "-W", "-f=${Status}", name).Output()
		var no *exec.ExitError
		if errors.As(err, &no) || (err == nil && !strings.Contains(string(out), "ok installed")) {
			list = append(list, name)
		}
	}
	if list == nil {
		return ""
	}
	return "; missing here: " + strings.Join(list, " ")
}

// programs are the processes that are compared.
type programs struct {
	ours, portable string // archload's solver, with and without its assembly kernels
	general        string // the driver of the general library
	tones          string // that of its eigenvalues
}

// buildAll builds the programs in a folder.
func buildAll(dir string) (p programs, err error) {
	if p.general, err = buildDriver(dir, "chol"); err != nil {
		return p, err
	}
	if p.tones, err = buildDriver(dir, "tones"); err != nil {
		return p, err
	}
	p.ours, p.portable = filepath.Join(dir, "ours"), filepath.Join(dir, "portable")
	for name, tags := range map[string]string{p.ours: "", p.portable: "purego"} {
		if out, err := exec.Command("go", "build", "-tags="+tags, "-o", name, "archload/cmd/internal/speed").CombinedOutput(); err != nil {
			return p, fmt.Errorf("go build: %w\n%s", err, out)
		}
	}
	return p, nil
}

// run starts one process and reads its figures. Threads of the general library
// are those of OpenBLAS; its own loops get none, which is when it is fastest.
func run(program string, threads int, args ...string) (*figures, error) {
	out, err := output(program, threads, args...)
	if err != nil {
		return nil, err
	}
	r := &figures{}
	if err := json.Unmarshal(out, r); err != nil {
		return nil, fmt.Errorf("%s: %w", filepath.Base(program), err)
	}
	return r, nil
}

// output runs one process and returns what it prints.
func output(program string, threads int, args ...string) ([]byte, error) {
	cmd := exec.Command(program, args...)
	n := strconv.Itoa(threads)
	cmd.Env = append(os.Environ(), "OMP_THREAD_LIMIT=1", "OPENBLAS_NUM_THREADS="+n, "GOMAXPROCS="+n)
	var fault strings.Builder
	cmd.Stderr = &fault
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w: %s", filepath.Base(program), strings.Join(args, " "), err, fault.String())
	}
	return out, nil
}

// machine says where the figures come from.
func machine() string {
	var list []string
	for _, of := range []struct{ key, file string }{{"model name", "/proc/cpuinfo"}, {"MemTotal", "/proc/meminfo"}} {
		data, err := os.ReadFile(of.file)
		if err != nil {
			continue
		}
		for line := range strings.Lines(string(data)) {
			if key, value, ok := strings.Cut(line, ":"); ok && strings.TrimSpace(key) == of.key {
				list = append(list, strings.TrimSpace(value))
				break
			}
		}
	}
	list = append(list, fmt.Sprintf("%d cores", runtime.NumCPU()), runtime.Version()+" "+runtime.GOOS+"/"+runtime.GOARCH)
	out, err := exec.Command("dpkg-query", "-W", "-f=${Package} ${Version}\n", "libsuitesparse-dev", "libopenblas-dev", "gcc").Output()
	if err == nil {
		list = append(list, strings.Split(strings.TrimSpace(string(out)), "\n")...)
	}
	return strings.Join(list, "; ")
}

// load average of the machine over the last minute: its 2 cores are busy at 2.
func busy() string {
	data, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return "unknown"
	}
	return strings.Fields(string(data))[0]
}

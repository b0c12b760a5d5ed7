//go:build cgo

package window

import (
	"embed"
	"fmt"
	"strings"

	"github.com/go-gl/gl/v3.3-core/gl"
)

//go:embed shaders/*
var shaderFiles embed.FS

// program is a linked pair of shaders with the places of its uniforms.
type program struct {
	id uint32
	at map[string]int32
}

// newProgram compiles shaders/vert.vert and shaders/frag.frag and looks up
// the uniforms once.
func newProgram(vert, frag string, uniforms ...string) (program, error) {
	p := program{id: gl.CreateProgram(), at: map[string]int32{}}
	for _, part := range []struct {
		file string
		kind uint32
	}{{vert + ".vert", gl.VERTEX_SHADER}, {frag + ".frag", gl.FRAGMENT_SHADER}} {
		id, err := newShader(part.file, part.kind)
		if err != nil {
			gl.DeleteProgram(p.id)
			return program{}, err
		}
		gl.AttachShader(p.id, id)
		gl.DeleteShader(id) // goes when the program goes
	}
	gl.LinkProgram(p.id)
	var ok int32
	if gl.GetProgramiv(p.id, gl.LINK_STATUS, &ok); ok == 0 {
		text := report(p.id, gl.GetProgramiv, gl.GetProgramInfoLog)
		gl.DeleteProgram(p.id)
		return program{}, fmt.Errorf("the graphics driver does not link %s with %s: %s", vert, frag, text)
	}
	for _, name := range uniforms {
		p.at[name] = gl.GetUniformLocation(p.id, gl.Str(name+"\x00"))
		if p.at[name] < 0 {
			gl.DeleteProgram(p.id)
			return program{}, fmt.Errorf("the shaders %s and %s have no use for %q", vert, frag, name)
		}
	}
	return p, nil
}

// newShader compiles one file.
func newShader(file string, kind uint32) (uint32, error) {
	text, err := shaderFiles.ReadFile("shaders/" + file)
	if err != nil {
		return 0, fmt.Errorf("shader %s: %w", file, err)
	}
	id := gl.CreateShader(kind)
	source, free := gl.Strs(string(text) + "\x00")
	gl.ShaderSource(id, 1, source, nil)
	free()
	gl.CompileShader(id)
	var ok int32
	if gl.GetShaderiv(id, gl.COMPILE_STATUS, &ok); ok == 0 {
		said := report(id, gl.GetShaderiv, gl.GetShaderInfoLog)
		gl.DeleteShader(id)
		return 0, fmt.Errorf("the graphics driver does not compile %s: %s", file, said)
	}
	return id, nil
}

// report fetches what the driver says of a shader or a program.
func report(id uint32, iv func(uint32, uint32, *int32), get func(uint32, int32, *int32, *uint8)) string {
	var n int32
	iv(id, gl.INFO_LOG_LENGTH, &n)
	if n == 0 {
		return "no reason given"
	}
	text := make([]uint8, n+1)
	get(id, n, nil, &text[0])
	return strings.TrimRight(string(text), "\x00\n ")
}

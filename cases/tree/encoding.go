package tree

import (
	"bytes"
	"encoding/binary"
	"errors"
	"unicode/utf16"
	"unicode/utf8"
)

// utf8Text returns a text file's content in UTF-8 without its byte order mark.
// UTF-16, as spreadsheets save "Unicode text", is known by its mark (Unicode
// Standard, section 23.8) and turned; other encodings are refused in words.
func utf8Text(data []byte) ([]byte, error) {
	switch {
	case bytes.HasPrefix(data, []byte{0xef, 0xbb, 0xbf}):
		data = data[3:]
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}):
		return fromUTF16(data[2:], binary.LittleEndian)
	case bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		return fromUTF16(data[2:], binary.BigEndian)
	}
	return data, nil
}

// fromUTF16 turns UTF-16 of the given byte order into UTF-8.
func fromUTF16(data []byte, order binary.ByteOrder) ([]byte, error) {
	if len(data)%2 != 0 {
		return nil, errors.New("want a text file saved as UTF-8; it begins as UTF-16 and ends in half a letter")
	}
	units := make([]uint16, len(data)/2)
	for i := range units {
		units[i] = order.Uint16(data[2*i:])
	}
	var out []byte
	for _, r := range utf16.Decode(units) {
		out = utf8.AppendRune(out, r)
	}
	return out, nil
}

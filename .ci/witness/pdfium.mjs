// PDFium as a library: how to open a file with it and how to read its strings.
import { readFileSync } from 'node:fs'
import { PDFiumLibrary } from '@hyzyla/pdfium'

const library = await PDFiumLibrary.init()
// The functions of PDFium as its own documentation has them, _FPDF_LoadPage and so on.
export const fpdf = library.module
export const { malloc, free } = fpdf.wasmExports

// open gives the handle of a document.
export function open(name) {
  const bytes = readFileSync(name)
  const at = malloc(bytes.length) // PDFium reads from it until the end
  fpdf.HEAPU8.set(bytes, at)
  const doc = fpdf._FPDF_LoadMemDocument(at, bytes.length, 0)
  if (!doc) throw new Error(`${name}: PDFium error ${fpdf._FPDF_GetLastError()}`)
  if (!fpdf._FPDF_DocumentHasValidCrossReferenceTable(doc)) throw new Error(`${name}: its cross-reference table had to be mended`)
  return doc
}

// bytesOf calls a function that takes a buffer and its size, and returns the size it needs.
export function bytesOf(call) {
  const size = call(0, 0)
  const at = malloc(size + 1)
  call(at, size)
  const out = Buffer.from(fpdf.HEAPU8.subarray(at, at + size))
  free(at)
  return out
}

// textOf is the same for a string, which PDFium ends with a zero.
export const textOf = (call) => bytesOf(call).toString('utf16le').replace(/\0+$/, '')

// doubles calls a function that writes n numbers, one by one, and returns whether it did.
export function doubles(n, call, { heap = 'HEAPF64', size = 8 } = {}) {
  const at = malloc(n * size)
  const ok = call(...Array.from({ length: n }, (_, i) => at + i * size))
  const out = Array.from(fpdf[heap].subarray(at / size, at / size + n))
  free(at)
  return ok ? out : null
}

export const floats = (n, call) => doubles(n, call, { heap: 'HEAPF32', size: 4 })

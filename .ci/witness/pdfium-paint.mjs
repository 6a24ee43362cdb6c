// node pdfium-paint.mjs DPI FILE.pdf: paints the pages, one after the other, as grey pictures.
import { fpdf, malloc, free, open } from './pdfium.mjs'
import { put } from './picture.mjs'

const [dpi, name] = process.argv.slice(2)
const scale = dpi / 72
const doc = open(name)
const gray = 1, white = 0xffffffff, annotations = 1

for (let i = 0; i < fpdf._FPDF_GetPageCount(doc); i++) {
  const page = fpdf._FPDF_LoadPage(doc, i)
  if (!page) throw new Error(`page ${i + 1} cannot be loaded`)
  const wide = Math.ceil(fpdf._FPDF_GetPageWidthF(page) * scale)
  const tall = Math.ceil(fpdf._FPDF_GetPageHeightF(page) * scale)
  const at = malloc(wide * tall)
  const bitmap = fpdf._FPDFBitmap_CreateEx(wide, tall, gray, at, wide)
  fpdf._FPDFBitmap_FillRect(bitmap, 0, 0, wide, tall, white)
  // The scale is given exactly: asked for a number of dots, PDFium stretches the page to fill it.
  const room = malloc(10 * 4)
  fpdf.HEAPF32.set([scale, 0, 0, scale, 0, 0, 0, 0, wide, tall], room / 4)
  fpdf._FPDF_RenderPageBitmapWithMatrix(bitmap, page, room, room + 6 * 4, annotations)
  put(wide, tall, fpdf.HEAPU8.subarray(at, at + wide * tall))
  fpdf._FPDFBitmap_Destroy(bitmap)
  fpdf._FPDF_ClosePage(page)
  free(room)
  free(at)
}

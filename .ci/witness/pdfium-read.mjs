// node pdfium-read.mjs FILE.pdf: prints what somebody finds who opens the file and clicks, as JSON.
import { fpdf, malloc, free, open, bytesOf, textOf, doubles, floats } from './pdfium.mjs'

const doc = open(process.argv[2])

// target is where a destination lands: the page, from 0, and the place on it in points; null where it says none.
function target(dest) {
  if (!dest) return null
  const at = malloc(6 * 4)
  const given = fpdf._FPDFDest_GetLocationInPage(dest, at, at + 4, at + 8, at + 12, at + 16, at + 20)
  const [hasX, hasY] = fpdf.HEAP32.subarray(at / 4, at / 4 + 2)
  const [x, y] = fpdf.HEAPF32.subarray(at / 4 + 3, at / 4 + 5)
  free(at)
  return { page: fpdf._FPDFDest_GetDestPageIndex(doc, dest), x: given && hasX ? x : null, y: given && hasY ? y : null }
}

// words are the words of a page, each with where a click on its middle leads.
function words(page) {
  const text = fpdf._FPDFText_LoadPage(page)
  const out = []
  let word = ''
  let box = null
  const end = () => {
    if (word) {
      const x = (box[0] + box[1]) / 2, y = (box[2] + box[3]) / 2
      const link = fpdf._FPDFLink_GetLinkAtPoint(page, x, y)
      out.push({ text: word, x, y, link, to: link ? target(fpdf._FPDFLink_GetDest(doc, link)) : null })
    }
    word = ''
    box = null
  }
  for (let i = 0; i < fpdf._FPDFText_CountChars(text); i++) {
    const c = String.fromCodePoint(fpdf._FPDFText_GetUnicode(text, i))
    if (/\s/.test(c)) {
      end()
      continue
    }
    const b = doubles(4, (l, r, low, top) => fpdf._FPDFText_GetCharBox(text, i, l, r, low, top))
    box = box ? [Math.min(box[0], b[0]), Math.max(box[1], b[1]), Math.min(box[2], b[2]), Math.max(box[3], b[3])] : b
    word += c
  }
  end()
  fpdf._FPDFText_ClosePage(text)
  return out
}

// links counts the places of a page that can be clicked.
function links(page) {
  const at = malloc(8)
  fpdf.HEAP32.set([0, 0], at / 4)
  let n = 0
  while (fpdf._FPDFLink_Enumerate(page, at, at + 4)) n++
  free(at)
  return n
}

function bookmarks(first) {
  const out = []
  for (let b = first; b; b = fpdf._FPDFBookmark_GetNextSibling(doc, b)) {
    out.push({ title: textOf((at, n) => fpdf._FPDFBookmark_GetTitle(b, at, n)), to: target(fpdf._FPDFBookmark_GetDest(doc, b)) })
    out.push(...bookmarks(fpdf._FPDFBookmark_GetFirstChild(doc, b)))
  }
  return out
}

function attachment(i) {
  const a = fpdf._FPDFDoc_GetAttachment(doc, i)
  const size = malloc(4)
  const content = bytesOf((at, n) => {
    fpdf._FPDFAttachment_GetFile(a, at, n, size)
    return fpdf.HEAP32[size / 4]
  })
  free(size)
  return { name: textOf((at, n) => fpdf._FPDFAttachment_GetName(a, at, n)), content: content.toString('base64') }
}

const pages = []
for (let i = 0; i < fpdf._FPDF_GetPageCount(doc); i++) {
  const page = fpdf._FPDF_LoadPage(doc, i)
  if (!page) throw new Error(`page ${i + 1} cannot be loaded`)
  const [left, low, right, top] = floats(4, (a, b, c, d) => fpdf._FPDFPage_GetMediaBox(page, a, b, c, d))
  pages.push({
    label: textOf((at, n) => fpdf._FPDF_GetPageLabel(doc, i, at, n)),
    wide: right - left, tall: top - low,
    links: links(page), words: words(page),
  })
  fpdf._FPDF_ClosePage(page)
}
const files = Array.from({ length: fpdf._FPDFDoc_GetAttachmentCount(doc) }, (_, i) => attachment(i))
process.stdout.write(JSON.stringify({ pages, bookmarks: bookmarks(fpdf._FPDFBookmark_GetFirstChild(doc, 0)), files }))

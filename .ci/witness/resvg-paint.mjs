// node resvg-paint.mjs DPI FONTS FILE.svg ...: paints each as a grey picture, lettered with the fonts of a folder alone.
import { readFileSync, readdirSync } from 'node:fs'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import { put } from './picture.mjs'

const [dpi, folder, ...names] = process.argv.slice(2)
await initWasm(readFileSync(new URL('node_modules/@resvg/resvg-wasm/index_bg.wasm', import.meta.url)))
const fontBuffers = readdirSync(folder).filter((f) => f.endsWith('.ttf')).map((f) => readFileSync(`${folder}/${f}`))

for (const name of names) {
  const sheet = new Resvg(readFileSync(name, 'utf8'), { dpi: Number(dpi), background: 'white', font: { fontBuffers } })
  const { width, height, pixels } = sheet.render()
  const dots = Buffer.alloc(width * height)
  for (let i = 0; i < dots.length; i++) dots[i] = pixels[4 * i] // black on white: each colour is as dark
  put(width, height, dots)
  sheet.free()
}

import { writeSync } from 'node:fs'

// put writes a grey picture, a byte for each dot, in the portable grey map format.
export function put(wide, tall, dots) {
  all(Buffer.from(`P5\n${wide} ${tall}\n255\n`))
  all(dots)
}

// all waits until the reader at the other end of the pipe has taken everything.
function all(bytes) {
  for (let n = 0; n < bytes.length;) n += writeSync(1, bytes, n)
}

const lf = 0x0a;

/** The lines of a file without their LFs; what stands after the last LF is a line too. */
export function splitLines(bytes: Uint8Array): Uint8Array[] {
  const lines: Uint8Array[] = [];
  let start = 0;
  for (let stop = bytes.indexOf(lf); stop >= 0; stop = bytes.indexOf(lf, start)) {
    lines.push(bytes.subarray(start, stop));
    start = stop + 1;
  }
  if (start < bytes.length) lines.push(bytes.subarray(start));
  return lines;
}

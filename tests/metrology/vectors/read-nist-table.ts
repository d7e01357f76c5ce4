/**
 * Reads a NIST SRD 60 table as distributed (text): a header line with 0 1 2 … or 0 -1 -2 … tells the
 * direction, then rows of a temperature and up to eleven values in mV.
 */
export function readNistTable(text: string): [celsius: number, millivolt: string][] {
  const values = new Map<number, string>();
  let direction = 1;
  for (const line of text.split(/\r?\n/)) {
    const fields = line.trim().split(/\s+/);
    const first = fields[0] ?? "";
    if (/^\S?C$/.test(first) && fields[1] === "0") {
      direction = fields[2] === "-1" ? -1 : 1;
      continue;
    }
    if (!/^-?\d+$/.test(first) || fields.length < 2) continue;
    fields.slice(1).forEach((value, i) => {
      values.set(Number(first) + direction * i, value);
    });
  }
  return [...values].sort(([a], [b]) => a - b);
}

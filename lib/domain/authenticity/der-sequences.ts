/**
 * DER values that stand one after the other, each as its own bytes (X.690, 8.1.3: tag, length, content). What is left
 * over because it is no whole value is left out.
 */
export const derSequences = (bytes: Uint8Array): readonly Uint8Array[] => {
  const found: Uint8Array[] = [];
  let at = 0;
  while (at + 2 <= bytes.length) {
    const first = bytes[at + 1] ?? 0;
    const more = first < 0x80 ? 0 : first & 0x7f;
    const content = bytes.subarray(at + 2, at + 2 + more).reduce((sum, byte) => sum * 256 + byte, 0);
    const end = at + 2 + more + (more === 0 ? first : content);
    if (first === 0x80 || end > bytes.length) break;
    found.push(bytes.slice(at, end));
    at = end;
  }
  return found;
};

/** What stands behind "#" in the address of the code on paper: it never reaches a server, the page reads it. */
export type PaperHash =
  | { readonly kind: "given"; readonly hex: string }
  /** No code was read, or all behind the sign was lost. */
  | { readonly kind: "absent" }
  /** The printed address was typed without a hash: it names the document, and says nothing of its content. */
  | { readonly kind: "address"; readonly token: string }
  /** Something stands there that is no hash: it was cut, changed or mistyped. */
  | { readonly kind: "broken" };

const lettersOfBase64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/** 32 bytes as 43 signs of base64url; undefined where the last sign carries more than it may. */
const hexOfBase64 = (text: string): string | undefined => {
  let [bits, count, hex] = [0, 0, ""];
  for (const sign of text) {
    bits = ((bits << 6) | lettersOfBase64.indexOf(sign)) & 0xffff;
    count += 6;
    while (count >= 4) {
      count -= 4;
      hex += ((bits >> count) & 15).toString(16);
    }
    if (hex.length === 64) break;
  }
  return (bits & ((1 << count) - 1)) === 0 && hex.length === 64 ? hex : undefined;
};

/** From location.hash or from what was typed: 64 hexadecimal digits, or the 43 signs of base64url. */
export const readPaperHash = (typed: string): PaperHash => {
  const text = typed.trim().replace(/^#/, "");
  if (text === "") return { kind: "absent" };
  if (/^[0-9a-fA-F]{64}$/.test(text)) return { kind: "given", hex: text.toLowerCase() };
  const hex = /^[A-Za-z0-9_-]{43}$/.test(text) ? hexOfBase64(text) : undefined;
  return hex === undefined ? { kind: "broken" } : { kind: "given", hex };
};
